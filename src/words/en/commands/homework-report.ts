import { answers, learners } from './counted.ts';

/** What a set says of its class, and what of it goes into files. */
export const homeworkReport = {
  help: {
    report: {
      summary: 'what a set says of its class',
      description:
        'Marks what was handed in, and tells skills by learners, wrong ideas, what each place told, and whom to look after.',
      json: 'the whole report as JSON, with the drawings on which wrong ideas showed',
    },
    export: {
      summary: 'marks, statements or a package as a file',
      description:
        'Writes the marks as a table (.csv), as xAPI statements (.json), or the sample paper as a QTI package (.zip).',
      file: 'its name says what it is: marks.csv, statements.json, package.zip',
      qti: 'of a package',
      base: 'where this installation is found, for statements',
      note: 'docs/interchange.md says what is in them.',
    },
  },
  handedIn: (counts: { handedIn: number; learners: number }) =>
    `${counts.handedIn} of ${learners(counts.learners)} handed in.`,
  learners: 'Learners',
  columns: { marks: 'marks', share: 'share' },
  total: ({ earned, outOf }: { earned: number; outOf: number }) => `${earned} of ${outOf}`,
  percent: (percent: number) => `${percent} %`,
  none: '-',
  figure: (value: number) => value.toFixed(2),
  all: 'All',
  ideas: 'Wrong ideas, the commonest first',
  noIdeas: 'None showed.',
  idea: (idea: { idea: string; learners: number; times: number }) =>
    `${idea.idea} ${learners(idea.learners)}, ${answers(idea.times)}.`,
  places: 'Places',
  statistics: {
    facility: 'facility',
    discrimination: 'discrimination',
    upperLower: 'upper-lower',
    leftOut: 'left out',
  },
  place: ({ place, skill }: { place: number; skill: string }) => `${place} ${skill}`,
  alpha: (alpha: string) =>
    `Cronbach's alpha ${alpha}. With fewer than some 30 learners these figures say little.`,
  toLookAfter: 'To look after',
  nobody: 'Nobody.',
  concerns: {
    nothingHandedIn: 'nothing handed in',
    answered: ({ answered, of }: { answered: number; of: number }) => `${answered} of ${of} answered`,
    ofTheMarks: (percent: string) => `${percent} of the marks`,
    idea: ({ times, idea }: { times: number; idea: string }) => `${times} times: ${idea}`,
  },
  lookAfter: ({ name, concerns }: { name: string; concerns: readonly string[] }) =>
    `${name}: ${concerns.join('; ')}`,
  noBase: {
    wrong: 'Statements name things by an address, and none was given.',
    right: 'Say where this installation is found, such as --base https://drawings.example.',
  },
  noSuchExport: {
    wrong: (file: string) => `${file}: neither .csv nor .json nor .zip.`,
    right: 'Name the file for what it is to be: marks.csv, statements.json, package.zip.',
  },
};
