/** A question, as it is read in a terminal. */
export const question = {
  caution: (caution: string) => `Caution: ${caution}`,
  choices: (choices: readonly string[]) => choices.join(' or '),
  inVolts: 'in volts',
};
