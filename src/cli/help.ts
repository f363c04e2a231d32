import { type Argument, type Command, type HelpConfiguration, Option } from 'commander';
import type { CommandWords } from '../words/commands.ts';
import type { Io } from './io.ts';
import { wrapText } from './style.ts';

/**
 * What stands under a command's help: examples, which stay whole so that they can be copied, and what else there is to
 * know. A test runs every example.
 */
export const helpAfter = (
  { columns, words }: Pick<Io, 'columns' | 'words'>,
  examples: readonly string[],
  ...notes: readonly string[]
): string =>
  [
    '',
    words.help.titles.examples,
    ...examples.map((example) => `  ${example.replaceAll('\n', '\n      ')}`),
    ...notes.flatMap((note) => ['', wrapText(note, columns)]),
  ].join('\n');

/** A command of its parent, with what its help begins with. */
export const commandIn = (
  parent: Command,
  name: string,
  { summary, description }: { readonly summary: string; readonly description: string },
): Command => parent.command(name).summary(summary).description(description);

/** An option that takes several values. The parser sees that by itself only where a plain letter stands before the dots. */
export function severalOf(option: string, value: string, told: string): Option {
  const several = new Option(`${option} <${value}...>`, told);
  several.variadic = true;
  return several;
}

/** `<file>`, `[names...]`. */
function placeOf(argument: Argument): string {
  const name = `${argument.name()}${argument.variadic ? '...' : ''}`;
  return argument.required ? `<${name}>` : `[${name}]`;
}

const namesOf = (command: Command): readonly string[] => [
  ...(command.parent ? namesOf(command.parent) : []),
  command.name(),
];

/** How the parser writes help, with all that it would say itself. */
export function helpIn({ help: { titles, places, ...said } }: CommandWords): HelpConfiguration {
  const TITLES: Readonly<Record<string, string>> = {
    'Usage:': titles.usage,
    'Arguments:': titles.arguments,
    'Options:': titles.options,
    'Commands:': titles.commands,
  };
  /** What is told of an option or an argument, with what can be chosen and what it is where nothing is given. */
  const described = (told: string, among: readonly string[] = [], given?: unknown): string => {
    const choices = among.map((choice) => JSON.stringify(choice)).join(', ');
    const standard = JSON.stringify(given);
    if (choices && given !== undefined) return said.withBoth({ told, choices, standard });
    if (choices) return said.withChoices({ told, choices });
    return given === undefined ? told : said.withDefault({ told, standard });
  };
  return {
    // So that it is folded on a narrow terminal too.
    minWidthToWrap: 12,
    styleTitle: (title) => TITLES[title] ?? title,
    commandUsage: (command) =>
      [
        ...namesOf(command),
        places.options,
        ...(command.commands.length > 0 ? [places.command] : []),
        ...command.registeredArguments.map(placeOf),
      ].join(' '),
    subcommandTerm: (command) =>
      [
        command.name(),
        ...(command.options.length > 0 ? [places.options] : []),
        ...command.registeredArguments.map(placeOf),
      ].join(' '),
    argumentDescription: ({ description, argChoices, defaultValue }) =>
      described(description, argChoices, defaultValue),
    // What can only be there or not is not there, unless it is given.
    optionDescription: ({ description, argChoices, defaultValue, required, optional }) =>
      described(description, argChoices, required || optional ? defaultValue : undefined),
  };
}
