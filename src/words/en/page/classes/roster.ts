/** A class as a file, both ways. */
import { speech } from '../../speech.ts';

interface Mistake {
  readonly file: string | undefined;
  readonly line: number | undefined;
  readonly message: string;
  readonly hint: string;
}

interface Counts {
  readonly made: number;
  readonly joined: number;
  readonly already: number;
}

export const roster = {
  slips: {
    title: 'Slips with links',
    nobody: 'Everybody has a password: nobody needs a link.',
    means: (count: number) =>
      speech.plural(count, {
        one: '1 learner has no password yet. Each gets a slip with name and link; links handed over before stop working.',
        other: `${count} learners have no password yet. Each gets a slip with name and link; links handed over before stop working.`,
      }),
  },
  give: {
    title: 'Take the class along',
    table: 'As one table (CSV)',
    oneRoster: 'As OneRoster 1.1 (zip)',
    making: 'Making the file…',
  },
  take: {
    title: 'Take a roster over',
    means:
      'A CSV table with a column <code>name</code>, and if you have them <code>id</code>, <code>sign-in</code> and <code>manner</code> (learner or tutor); or a OneRoster 1.1 export: its zip, or its CSV files together. It is shown first what would come of it. Nobody is taken out of the class.',
    files: 'File or files',
    reading: 'Reading…',
    which: 'Which class of those in the files',
    whichNote: 'Its sourcedId, as it stands above.',
    lookAgain: 'Look again',
    takingOver: 'Taking it over…',
    takeOver: 'Take it over',
  },
  looked: {
    taken: ({ made, joined, already }: Counts) =>
      `Taken over: ${made} new, ${joined} known and now in the class, ${already} were in it.`,
    would: ({ made, joined, already }: Counts) =>
      `It would bring ${made} new, ${joined} known into the class; ${already} are in it.`,
    mistakes: (count: number) =>
      speech.plural(count, {
        one: 'Nothing was taken over. This is to be put right in the file first:',
        other: 'Nothing was taken over. These are to be put right in the file first:',
      }),
    mistake: ({ file, line, message, hint }: Mistake) => {
      const told = `${message} ${hint}`;
      if (file === undefined) return line === undefined ? told : `line ${line}: ${told}`;
      return line === undefined ? `${file}: ${told}` : `${file}, line ${line}: ${told}`;
    },
    passedOver: 'Passed over:',
    name: 'Name',
    as: 'As',
    manners: { learner: 'learner', tutor: 'tutor' },
    comes: 'What comes of it',
    results: { new: 'is new', joined: 'is known, comes into the class', already: 'is in the class' },
  },
  files: {
    brokenZip: 'This zip can’t be opened. Unpack it, and choose its files instead.',
    tooLarge: 'These files are too large for a roster. Is it the right file?',
    noTable: 'There is no table in it: a roster is a CSV file, or a zip of them.',
    several: 'Choose one table, or all files of one OneRoster export together.',
  },
};
