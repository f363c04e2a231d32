/** A command begins as soon as what it needs is loaded, so it loads nothing else. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtPolewise } from '../support/built.ts';
import { loadedBy } from './loaded.ts';

const folder = mkdtempSync(join(tmpdir(), 'polewise-loaded-'));
const fan = join(folder, 'fan.txt');
writeFileSync(fan, 'supply A 24 V AC\n-H1 lamp\nA:L -H1:X1-X2 A:N\n');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let polewise: string;
beforeAll(async () => {
  polewise = await builtPolewise();
});

/** The folders that modules are from, `src/cli` and not deeper. */
const floors = (modules: readonly string[]): string[] => [
  ...new Set(modules.map((name) => /^(?:src\/[^/]+|shared)/.exec(name)![0])),
];

describe('what is loaded', () => {
  it.each(['--help', '--version', 'help homework', 'solve --help', 'serve --help', 'homework new --help'])(
    'for %s is what says what can be given',
    async (words) => {
      const { modules, packages, printed } = await loadedBy(polewise, words.split(' '));
      expect(printed).toContain('polewise');
      expect(packages).toEqual(['commander']);
      expect(modules).toContain('src/cli/program.ts');
      const others = modules.filter((name) => !/^src\/(?:cli|words)\//.test(name));
      expect(others).toEqual(['shared/question-kinds.ts']);
      // One language, and of that what commands say.
      const spoken = modules.filter((name) => name.startsWith('src/words/en/'));
      expect(spoken).toContain('src/words/en/commands/index.ts');
      expect(spoken.filter((name) => name.startsWith('src/words/en/page/'))).toEqual([]);
      // Of the commands, what they do stands beside it.
      const doing = modules.filter(
        (name) =>
          name.startsWith('src/cli/commands/') && !/\.command\.ts$|\/(?:store-)?options\.ts$/.test(name),
      );
      expect(doing).toEqual([]);
    },
  );

  it('to solve is what reads a circuit and solves it', async () => {
    const { modules, packages, printed } = await loadedBy(polewise, ['solve', fan]);
    expect(printed).toContain('Outcome: steady.');
    expect(modules).toContain('src/solver/solve.ts');
    expect(packages).toEqual(['commander', 'zod']);
    expect(floors(modules).sort()).toEqual([
      'shared',
      'src/circuit',
      'src/cli',
      'src/graph',
      'src/solver',
      'src/words',
    ]);
    // The shapes of devices, and of the rest what a circuit and a scenario need.
    const shapes = modules.filter((name) => name.startsWith('shared/'));
    expect(shapes).toContain('shared/devices/relays.ts');
    expect(shapes.filter((name) => !name.startsWith('shared/devices/'))).toEqual([
      'shared/circuit.ts',
      'shared/form-name.ts',
      'shared/question-kinds.ts',
      'shared/scenario.ts',
    ]);
  });

  it('to draw is no PDF, unless one is drawn', async () => {
    const text = await loadedBy(polewise, ['draw', fan]);
    expect(text.packages).toEqual(['commander', 'zod']);
    expect(floors(text.modules)).not.toContain('src/generator');
    const svg = await loadedBy(polewise, ['draw', fan, '-o', join(folder, 'fan.svg')]);
    expect(svg.packages).toEqual(['commander', 'zod']);
    const pdf = await loadedBy(polewise, ['draw', fan, '-o', join(folder, 'fan.pdf')]);
    expect(pdf.packages).toContain('pdfkit');
  });

  it('to make a class is the store, and no server', async () => {
    const words = ['class', 'new', 'Flour line', '--data', folder];
    const { modules, packages, printed } = await loadedBy(polewise, words);
    expect(printed).toContain('Flour line');
    expect(packages).toContain('kysely');
    expect(packages).not.toContain('fastify');
    expect(floors(modules)).not.toContain('src/server');
  });
});
