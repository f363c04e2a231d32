/** What stands in files for other systems. */
export const interchange = {
  volts: 'A number of volts',
  nothing: 'Nothing: the points have no common reference',
  voltsEntry: 'Volts: ',
  itemTitle: ({ set, number, asked }: { set: string; number: number; asked: string }): string =>
    `${set}, ${number}: ${asked}`,
  given: ({ item, answer }: { item: string; answer: string }): string => `${item}: ${answer}`,
};
