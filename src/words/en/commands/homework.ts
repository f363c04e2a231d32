import { say } from '../../statement.ts';
import { type FormSaid, forms } from '../forms.ts';
import { items, papers } from './counted.ts';

/** Making sets and running them. */
export const homework = {
  help: {
    summary: 'sets of homework, papers, marks and reports',
    description:
      'Makes and runs homework for a class, on the store directly: whoever may read the data folder may use it.',
    new: {
      summary: 'draft a set',
      description: 'Makes a draft: what is asked, how often, and when it is open.',
      options: {
        title: 'what learners see it called',
        topic: 'every skill of this topic; may be given several times',
        skill: 'this skill; may be given several times',
        items: 'how many items a paper has',
        level: 'how large the circuits are',
        marks: 'marks for each item',
        opens: 'when it opens: now, +2d, "2026-03-02 08:00"',
        closes: 'when it closes: +7d after it opens, "2026-03-09 18:00"',
        attempts: 'how often each learner may try',
        counts: 'which attempt counts',
        hints: 'let learners ask for hints',
        review: 'when learners may look through the marked paper',
        supervised: 'somebody watches the class at work; evidence says so',
        issue: 'issue it at once',
      },
      note: 'Times are in the time zone of this machine.',
    },
    issue: {
      summary: 'issue a set to its class',
      description:
        'Issues a set and makes a paper for every learner. Whoever joins later gets one on beginning. Twice is once, so it can be stopped and run again.',
    },
    closing: {
      summary: 'let a set close later',
      description: 'Gives a set that is issued and has not closed a later closing time, for everybody.',
      time: 'a time such as "2026-03-09 18:00", or +2d for two days after the time it has',
    },
    list: {
      summary: 'list the sets of a class',
      description: 'Lists the sets of a class, the newest first.',
    },
    sample: {
      summary: 'show a paper as a learner would get one',
      description: 'Prints a paper of the set that nobody gets, with the right answers.',
      number: 'another number gives another paper',
    },
  },
  nothingAsked: {
    wrong: 'Nothing is asked.',
    right: 'Name what it is about with --topic or --skill.',
  },
  notLikeThis: {
    wrong: (form: FormSaid) => `The set can't be like this. ${say(forms, form)}`,
    right: 'polewise homework new --help says what can be given.',
  },
  itemsOn: ({ title, count, skills }: { title: string; count: number; skills: readonly string[] }) =>
    `${title}: ${items(count)} on ${skills.join(', ')}.`,
  openFrom: ({ opens, closes }: { opens: string; closes: string }) => `Open from ${opens} until ${closes}.`,
  isADraft: 'It is a draft; nobody else sees it yet.',
  /** Behind commands that can be typed next. */
  next: { sample: 'shows a paper as a learner would get one', issue: 'issues it' },
  issued: ({ count, closes }: { count: number; closes: string }) =>
    `Issued, with ${papers(count)} made. It closes ${closes}.`,
  issuedPartly: ({ made, of, closes }: { made: number; of: number; closes: string }) =>
    `The set is issued, and ${made} of ${papers(of)} are made. It closes ${closes}.`,
  othersLater: 'The others are made when this is run again, or each when its learner begins.',
  closes: (closes: string) => `It closes ${closes}.`,
  states: { draft: 'draft', before: 'before', open: 'open', closed: 'closed', withdrawn: 'withdrawn' },
  setRow: (row: { state: string; closes: string; handedIn: number; learners: number }) =>
    `${row.state}, until ${row.closes}; ${row.handedIn} of ${row.learners} handed in`,
  noSetsYet: 'There are no sets yet; polewise homework new makes one.',
  sampleItem: ({ place, skill, marks }: { place: number; skill: string; marks: number }) =>
    `${place}. ${skill}, of ${marks}`,
  rightAnswer: ({ asked, right }: { asked: string; right: string }) => `${asked}: ${right}`,
};
