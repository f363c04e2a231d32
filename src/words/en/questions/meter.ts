export const meter = {
  title: 'Meter',
  /** In a list of kinds. */
  short: 'meter',
  known: ({ first, second, volts }: { first: string; second: string; volts: number }): string =>
    `A meter between ${first} and ${second} shows ${volts} V.`,
  task: ({ first, second }: { first: string; second: string }): string =>
    `A voltmeter is put between ${first} and ${second} (the second is its reference). What does it read?`,
  how: 'Write the number of volts; or "nothing" where the two points have no common reference. With direct current the sign counts.',
};
