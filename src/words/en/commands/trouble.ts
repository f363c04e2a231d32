/** What is wrong with the words of a command line. */
export const trouble = {
  negative: (given: string) => `${given}: nothing that is given here can be negative.`,
  noOption: (option: string) => `There is no option ${option}.`,
  noCommand: (command: string) => `There is no command ${command}.`,
  missing: (what: string) => `${what} is missing.`,
  nothingAfter: (option: string) => `${option}: what comes after it is missing.`,
  tooMuch: ({ given, wanted }: { given: number; wanted: number }) =>
    wanted === 1
      ? `Too much is given: ${given} words where 1 is wanted. Put names of several words in quotation marks.`
      : `Too much is given: ${given} words where ${wanted} are wanted. Put names of several words in quotation marks.`,
  notAChoice: ({ option, given, choices }: { option: string; given: string; choices: readonly string[] }) =>
    `${option} ${given}: it can be ${choices.join(', ')}.`,
  meant: (name: string) => `Did you mean ${name}?`,
  meantOneOf: (names: readonly string[]) => `Did you mean one of ${names.join(', ')}?`,
  seeHelp: (command: string) => `${command} --help shows what can be given.`,
};
