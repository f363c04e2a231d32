/** What is wrong with a roster that is taken over, and what stands in one that is given. */
const ONE_LINE = 'One line, 1 to 80 letters.';
const NO_FORMULA = 'A name begins with a letter or digit: spreadsheets run what begins with = + - or @.';

export const rosters = {
  mistakes: {
    noNameColumn: {
      wrong: 'The column name is not there.',
      right: ({ columns }: { columns: readonly string[] }) =>
        `Columns are ${columns.join(', ')}; only name has to be there.`,
    },
    formula: {
      wrong: ({ given }: { given: string }) => `${given} can't be a name.`,
      right: NO_FORMULA,
    },
    noName: { wrong: 'There is no name that can be kept.', right: ONE_LINE },
    otherManner: {
      wrong: ({ given }: { given: string }) => `manner can't be ${given}.`,
      right: 'It can be learner or tutor.',
    },
    noSignIn: {
      wrong: ({ given }: { given: string }) => `sign-in can't be ${given}.`,
      right: '2 to 40 small letters, digits, dots, _ and -.',
    },
    noClass: {
      wrong: 'There is no class in it.',
      right: 'Hand over an export with one class at least.',
    },
    whichClass: {
      wrong: 'It is not clear which class is meant.',
      right: ({ classes }: { classes: readonly { id: string; title: string }[] }) =>
        `Name one: ${classes.map(({ id, title }) => `${id} (${title})`).join(', ')}.`,
    },
    unkeepable: {
      wrong: ({ id }: { id: string }) => `The name of ${id} can't be kept.`,
      right: ONE_LINE,
    },
    formulaOf: {
      wrong: ({ id }: { id: string }) => `The name of ${id} can't be kept.`,
      right: NO_FORMULA,
    },
  },
  /** What OneRoster wants to have names of, and Polewise has none for. */
  given: {
    session: ({ from }: { from: string }) => `From ${from}`,
    course: 'Reading control circuits',
  },
};
