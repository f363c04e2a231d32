/** What is wrong with a command line, in the words that everything else is told in. */
import type { Command, CommanderError } from 'commander';
import type { CommandWords } from '../words/commands.ts';
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
type Telling = (trouble: CommandWords['trouble'], named: string, message: string) => string;
const TOLD: Readonly<Record<string, Telling>> = {
  'commander.unknownOption': (trouble, named) =>
    /^-\d/.test(named) ? trouble.negative(named) : trouble.noOption(named),
  'commander.unknownCommand': (trouble, named) => trouble.noCommand(named),
  'commander.missingArgument': (trouble, named) => trouble.missing(`<${named}>`),
  'commander.optionMissingArgument': (trouble, named) => trouble.nothingAfter(named),
  'commander.missingMandatoryOptionValue': (trouble, named) => trouble.missing(named),
  'commander.excessArguments': (trouble, _, message) => {
    const [, wanted = '', given = ''] = /Expected (\d+) arguments? but got (\d+)/.exec(message) ?? [];
    return trouble.tooMuch({ given: Number(given), wanted: Number(wanted) });
  },
  'commander.invalidArgument': (trouble, _, message) => {
    const [, option = '', given = '', choices = ''] =
      /option '([^']*)' argument '([^']*)' is invalid\. Allowed choices are (.*)\.$/.exec(message) ?? [];
    return option
      ? trouble.notAChoice({ option: option.replace(/ <.*/, ''), given, choices: choices.split(', ') })
      : message;
  },
};

/** What may have been meant, where the parser knows something like it: `(Did you mean one of a, b?)`. */
function meantBy(suggestion: string, { trouble }: CommandWords): string {
  const [, oneOf, names = ''] = /^\(Did you mean (one of )?(.*)\?\)$/.exec(suggestion) ?? [];
  if (!names) return '';
  return oneOf ? trouble.meantOneOf(names.split(', ')) : trouble.meant(names);
}

export function commandTrouble(
  error: CommanderError,
  program: Command,
  words: readonly string[],
  said: CommandWords,
): UsageError {
  const [line = '', suggestion = ''] = error.message.replace(/^error: /, '').split('\n');
  const [, named = ''] = /'([^']*)'/.exec(line) ?? [];
  const told =
    TOLD[error.code]?.(said.trouble, named, line) ?? `${line.charAt(0).toUpperCase()}${line.slice(1)}`;
  const meant = meantBy(suggestion, said);
  const help = said.trouble.seeHelp(nameOf(commandIn(program, words)));
  return new UsageError(told, meant ? `${meant} ${help}` : help);
}
