/** Every command's help is written in one style, fits the terminal, and has examples (which documented-examples runs). */
import type { Command } from 'commander';
import { describe, expect, it } from 'vitest';
import { createProgram } from '../../src/cli/program.ts';
import { families } from '../../src/generator/index.ts';
import { fakeIo, runCommand } from './fake-io.ts';

interface Named {
  readonly words: readonly string[];
  readonly command: Command;
}

const under = (command: Command, words: readonly string[] = []): Named[] =>
  command.commands.flatMap((each) => {
    const name = [...words, each.name()];
    return [{ words: name, command: each }, ...under(each, name)];
  });

const commands = under(createProgram(fakeIo().io).command);
const PHRASE = /^(?:[a-z0-9.(`-]|PDF|SVG|QTI)/;

describe.each(commands.map(({ words, command }) => [words.join(' '), words, command] as const))(
  'the help of %s',
  (_name, words, command) => {
    it('has a phrase for its summary and sentences for its description', () => {
      expect(command.summary()).toMatch(PHRASE);
      expect(command.summary()).not.toMatch(/[.!]$/);
      expect(command.description()).toMatch(/^[A-Z].*\.$/s);
    });

    it('has a phrase for each argument and option', () => {
      for (const { description } of [...command.options, ...command.registeredArguments]) {
        expect(description).toMatch(PHRASE);
        expect(description).not.toMatch(/[.!]$/);
      }
    });

    it('says where the data folder is after everything else', () => {
      const names = command.options.map(({ long }) => long);
      const place = names.filter((name) => name === '--data' || name === '--banks' || name === '--log');
      if (place.length > 0 && words[0] !== 'demo') expect(names.slice(-place.length)).toEqual(place);
    });

    it('has examples where it does something itself', async () => {
      const { out, code } = await runCommand([...words, '--help']);
      expect(code).toBe(0);
      expect(out).not.toContain('\nExample:');
      if (command.commands.length === 0)
        expect(out).toMatch(new RegExp(`\nExamples:\n {2}.*polewise ${words.join(' ')}`));
    });

    it.each([60, 80])('fits %i columns, but for its examples', async (columns) => {
      const { out } = await runCommand([...words, '--help'], { columns });
      const [before = '', after = ''] = out.split('\nExamples:\n');
      const rest = after.includes('\n\n') ? after.slice(after.indexOf('\n\n')) : '';
      for (const line of `${before}${rest}`.split('\n'))
        if (!line.startsWith('Usage:')) expect(line.length, line).toBeLessThanOrEqual(columns);
    });
  },
);

it('the program names all of them', async () => {
  const { out } = await runCommand(['--help']);
  for (const { words } of commands.filter(({ words }) => words.length === 1))
    expect(out).toContain(`  ${words[0]}`);
});

it.each(['ask', 'homework new'])('help %s is its own help', async (words) => {
  const { out, code } = await runCommand(['help', ...words.split(' ')]);
  expect(code).toBe(0);
  expect(out).toBe((await runCommand([...words.split(' '), '--help'])).out);
  expect(out).toContain(`\nExamples:\n  polewise ${words}`);
});

it('the help of ask names every family', async () => {
  const { out } = await runCommand(['help', 'ask'], { columns: 200 });
  for (const { id } of families) expect(out).toMatch(new RegExp(`Families: .*\\b${id}\\b`, 's'));
});
