/** Numbers that are given to options. */
export const numbers = {
  tooSmall: ({ option, given, low }: { option: string; given: string; low: number }) =>
    `${option} ${given}: less than ${low}.`,
  tooLarge: ({ option, given, high }: { option: string; given: string; high: number }) =>
    `${option} ${given}: more than ${high}.`,
  notWhole: ({ option, given }: { option: string; given: string }) =>
    `${option} ${given}: not a whole number.`,
  right: ({ low, high, example }: { low: number; high: number; example: string }) =>
    `Give one from ${low} to ${high}, such as ${example}.`,
};
