/** What stands in a roster that is given. */

export const rosters = {
  /** What OneRoster wants to have names of, and Polewise has none for. */
  given: {
    session: ({ from }: { from: string }) => `From ${from}`,
    course: 'Reading control circuits',
  },
};
