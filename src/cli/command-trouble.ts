/** What is wrong with a command line, in the words that everything else is told in. */
import type { Command, CommanderError } from 'commander';
import { UsageError } from './io.ts';

/** The command that was meant, as far as its name could be read. */
function commandIn(program: Command, words: readonly string[]): Command {
  let command = program;
  for (const word of words) {
    const next = command.commands.find((one) => one.name() === word);
    if (!next) break;
    command = next;
  }
  return command;
}

const nameOf = (command: Command): string =>
  command.parent ? `${nameOf(command.parent)} ${command.name()}` : command.name();

/** What the parser says, by its code, with what it names in quotation marks. */
const WORDS: Readonly<Record<string, (named: string, message: string) => string>> = {
  'commander.unknownOption': (named) =>
    /^-\d/.test(named)
      ? `${named}: nothing that is given here can be negative.`
      : `There is no option ${named}.`,
  'commander.unknownCommand': (named) => `There is no command ${named}.`,
  'commander.missingArgument': (named) => `<${named}> is missing.`,
  'commander.optionMissingArgument': (named) => `${named}: what comes after it is missing.`,
  'commander.missingMandatoryOptionValue': (named) => `${named} is missing.`,
  'commander.excessArguments': (_, message) => {
    const [, wanted = '', got = ''] = /Expected (\d+) arguments? but got (\d+)/.exec(message) ?? [];
    return `Too much is given: ${got} words where ${wanted} ${wanted === '1' ? 'is' : 'are'} wanted. Put names of several words in quotation marks.`;
  },
  'commander.invalidArgument': (_, message) => {
    const [, option = '', given = '', choices = ''] =
      /option '([^']*)' argument '([^']*)' is invalid\. Allowed choices are (.*)\.$/.exec(message) ?? [];
    return option ? `${option.replace(/ <.*/, '')} ${given}: it can be ${choices}.` : message;
  },
};

export function commandTrouble(
  error: CommanderError,
  program: Command,
  words: readonly string[],
): UsageError {
  const [line = '', suggestion = ''] = error.message.replace(/^error: /, '').split('\n');
  const [, named = ''] = /'([^']*)'/.exec(line) ?? [];
  const told = WORDS[error.code]?.(named, line) ?? `${line.charAt(0).toUpperCase()}${line.slice(1)}`;
  const meant = suggestion.replace(/^\(|\)$/g, '');
  const help = `${nameOf(commandIn(program, words))} --help shows what can be given.`;
  return new UsageError(told, meant ? `${meant} ${help}` : help);
}
