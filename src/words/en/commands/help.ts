/** What stands in every help. */
export const help = {
  titles: {
    usage: 'Usage:',
    arguments: 'Arguments:',
    options: 'Options:',
    commands: 'Commands:',
    examples: 'Examples:',
  },
  /** Where options may stand, and the name of a command. */
  places: { options: '[options]', command: '[command]' },
  withChoices: ({ told, choices }: { told: string; choices: string }) => `${told} (choices: ${choices})`,
  withDefault: ({ told, standard }: { told: string; standard: string }) => `${told} (default: ${standard})`,
  withBoth: ({ told, choices, standard }: { told: string; choices: string; standard: string }) =>
    `${told} (choices: ${choices}, default: ${standard})`,
};
