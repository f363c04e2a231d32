/** One set: what it is, and what is done with it. */
import { kinds } from '../../questions/kinds.ts';
import { moments } from '../moments.ts';

const { when } = moments;

interface Making {
  readonly made: number;
  readonly of: number;
}

export const one = {
  items: (count: number) => `${count} items`,
  marks: (count: number) => `${count} marks`,
  all: 'All sets of the class',
  facts: {
    opens: 'Opens',
    closes: 'Closes',
    size: 'Size',
    attempts: 'Attempts',
    oneAttempt: 'One',
    several: {
      best: (attempts: number) => `${attempts}: the best attempt counts`,
      last: (attempts: number) => `${attempts}: the last attempt counts`,
    },
    help: 'Help',
    review: 'Marks and answers',
    supervision: 'Supervision',
    supervised: 'Sat under supervision',
    notSupervised: 'None',
  },
  places: {
    title: 'What each place asks',
    place: 'Place',
    skill: 'Skill',
    askedFor: 'Asked for',
    kind: (kind: keyof typeof kinds): string => kinds[kind].short,
    hard: 'Hard',
    difficulty: (value: number) => value.toFixed(1),
    marks: 'Marks',
  },
  withdraw: {
    draft: 'Erase the draft',
    draftSure: 'Erase it',
    issued: 'Withdraw',
    issuedSure: 'Withdraw it: learners no longer see it',
  },
  issue: {
    ask: 'Issue to the class',
    title: (title: string) => `Issue “${title}”?`,
    now: (closesAt: number) =>
      `Learners of the class see it, and may begin, at once. Once issued, it stays as it is: skills, items, marks, opening time, attempts, help, supervision and when marks are shown. It may close later than ${when(closesAt)}, never earlier; and it can be withdrawn.`,
    later: ({ opensAt, closesAt }: { opensAt: number; closesAt: number }) =>
      `Learners of the class see it at once, and may begin on ${when(opensAt)}. Once issued, it stays as it is: skills, items, marks, opening time, attempts, help, supervision and when marks are shown. It may close later than ${when(closesAt)}, never earlier; and it can be withdrawn.`,
    sure: 'Issue it as it is',
    busy: 'Issuing…',
    back: 'Look at it again',
  },
  sample: {
    link: 'Sample paper',
    drawing: 'Drawing a sample paper…',
    title: (number: number) => `Sample paper ${number}`,
    nobodys: 'with the right answers; nobody gets it',
    another: 'Another sample',
    item: ({ place, title }: { place: number; title: string }) => `${place}. ${title}`,
  },
  change: 'Change',
  typeMarks: 'Type in marks from paper',
  closeLater: {
    title: 'Let it close later',
    closes: (at: number) => `Closes, instead of ${when(at)}`,
    close: 'Close later',
    busy: 'Moving…',
  },
  prepare: {
    stuck: 'No more papers could be made just now. Try again.',
    drawing: ({ made, of }: Making) => `Drawing the papers: ${made} of ${of}`,
    mayBeLeft:
      'This may be left: whoever begins earlier gets a paper at once, and looking here again goes on.',
    nobody: 'There is nobody in the class yet.',
    made: (count: number) => `All ${count} papers are made.`,
  },
  downloads: {
    title: 'To take away',
    labels: {
      papersPdf: 'Papers to print',
      keyPdf: 'Answers to all papers',
      marksCsv: 'Marks as a table (CSV)',
      statements: 'Statements (xAPI)',
      package30: 'Sample as a package (QTI 3.0)',
      package22: 'Sample as a package (QTI 2.2)',
    },
    /** How the files are called, after the title of the set. */
    files: {
      papersPdf: 'papers.pdf',
      keyPdf: 'answers.pdf',
      marksCsv: 'marks.csv',
      statements: 'statements.json',
      package30: 'qti-3.0.zip',
      package22: 'qti-2.2.zip',
    },
    /** A file of a set or a person whose name has no letter. */
    untitled: 'homework',
    stuck: 'No more papers could be drawn just now. Try again.',
    failed: ({ file, why }: { file: string; why: string }) => `${file}: ${why}`,
    drawing: ({ file, made, of }: Making & { file: string }) =>
      `${file}: drawing the papers, ${made} of ${of}…`,
    making: (file: string) => `${file}: being made…`,
    progress: (file: string) => `${file} is being made`,
  },
};
