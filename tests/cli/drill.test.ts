import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { replay } from '../../src/memory/index.ts';
import { historyOf } from '../../src/practice/index.ts';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
import { builtPolewise } from '../support/built.ts';
import { runCommand } from './fake-io.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'polewise-drill-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});
const file = (name: string): string => join(folder, name);

async function kept(data: string) {
  const store = await openSqliteStore(storeFile(data));
  const answers = await store.answersOf('me');
  const recalls = await store.recallsOf('me');
  await store.close();
  return { answers, recalls };
}

describe('drill', () => {
  it('asks, marks, explains, keeps answers and memory, and says what comes back', async () => {
    const data = file('whole');
    const { code, out } = await runCommand(['drill', '--count', '3', '--seed', 's', '--data', data], {
      lines: ['pass', 'pass', 'pass'],
    });
    expect(code).toBe(0);
    expect(out).toContain('Question 1 of 3');
    expect(out).toContain('Question 3 of 3');
    expect(out).toContain('Why');
    expect(out).toContain('3 questions answered and kept.');
    expect(out).toMatch(/Comes back\n {2}\S/);
    const { answers, recalls } = await kept(data);
    expect(answers).toHaveLength(3);
    expect(answers.every(({ mark }) => mark.share === 0)).toBe(true);
    expect(recalls).toEqual(replay(historyOf(answers)));
  });

  it('marks a right answer right, and the memory goes up', async () => {
    const data = file('right');
    // Both states of the first question are tried on two stores with the same seed: one of the two answers is right.
    const asked = await runCommand(['drill', '--count', '1', '--seed', 't', '--data', file('look')], {
      lines: ['pass'],
    });
    const right = [...asked.out.matchAll(/left out {2}(\S+) +(\S+)/g)].map(
      ([, item, state]) => `${item} ${state}`,
    );
    expect(right.length).toBeGreaterThan(0);
    const { out } = await runCommand(['drill', '--count', '1', '--seed', 't', '--data', data], {
      lines: [right.join(', ')],
    });
    expect(out).toContain('Right.');
    expect(out).toContain('Went well');
    const { answers } = await kept(data);
    expect(answers[0]!.mark.correct).toBe(true);
    expect(['firm', 'sure']).toContain(answers[0]!.grade);
  });

  it('shows the part of the lesson that helps after two lost answers in a row to a skill, and not before', async () => {
    const drilled = (lines: readonly string[]) =>
      runCommand(
        [
          'drill',
          '--skill',
          'make-contact',
          '--count',
          `${lines.length}`,
          '--seed',
          'w',
          '--data',
          file('wrong'),
        ],
        { lines },
      );
    const helps =
      'That went wrong twice in a row. This part of the lesson helps:\nMake and break: A make contact';
    expect((await drilled(['pass'])).out).not.toContain('twice in a row');
    const { out } = await drilled(['pass', 'pass']);
    expect(out.split(helps)).toHaveLength(3);
    expect(out).toContain('Next time this skill comes with a smaller circuit.');
    // Nothing of how a lesson is marked up.
    expect(out.slice(out.indexOf(helps))).not.toMatch(/\*\*|`|\]\(/);
  });

  it('asks the same learner the same questions for the same seed', async () => {
    const run = async (name: string) =>
      (
        await runCommand(['drill', '--count', '2', '--seed', 'same', '--data', file(name)], {
          lines: ['pass', 'pass'],
        })
      ).out;
    expect(await run('one')).toBe(await run('two'));
  });

  it('never shows a circuit again that was answered before', async () => {
    const data = file('again');
    for (const seed of ['x', 'x', 'y']) {
      await runCommand(['drill', '--count', '4', '--seed', seed, '--data', data], {
        lines: ['pass', 'pass', 'pass', 'pass'],
      });
    }
    const { answers } = await kept(data);
    expect(answers).toHaveLength(12);
    expect(new Set(answers.map(({ circuit }) => circuit)).size).toBe(12);
  });

  it('gives a hint that counts, and refuses what it cannot read without marking it', async () => {
    const data = file('hint');
    const { out } = await runCommand(['drill', '--count', '1', '--seed', 'u', '--data', data], {
      lines: ['?', '', 'purple elephants', 'pass'],
    });
    expect(out).toContain('Type an answer.');
    const { answers } = await kept(data);
    expect(answers).toHaveLength(1);
    expect(answers[0]!.attempt.help.hint).toBe(true);
  });

  it('asks only the skill that is wanted, and refuses one that is not there', async () => {
    const wrong = await runCommand(['drill', '--skill', 'juggling', '--data', file('skill')]);
    expect(wrong.code).toBe(2);
    const [, known] = wrong.err.match(/Skills: ([a-z0-9-]+)/)!;
    const { code } = await runCommand(['drill', '--skill', known!, '--count', '2', '--data', file('skill')], {
      lines: ['pass', 'pass'],
    });
    expect(code).toBe(0);
    const { answers } = await kept(file('skill'));
    expect(new Set(answers.map(({ skill }) => skill))).toEqual(new Set([known]));
  });

  it('ends at the end of the input and at stop, with a summary', async () => {
    const ended = await runCommand(['drill', '--count', '5', '--data', file('end')], { lines: ['pass'] });
    expect(ended.out).toContain('1 question answered and kept.');
    const stopped = await runCommand(['drill', '--count', '5', '--data', file('stop')], { lines: ['stop'] });
    expect(stopped.out).toContain('No question was answered.');
  });

  it.each<[string, string[], Record<string, string>?]>([
    ['a count that is no number', ['--count', 'many']],
    ['a count of nothing', ['--count', '0']],
    ['a folder of banks that is not there', ['--banks', '/nowhere/at/all']],
    ['a folder that cannot be made', ['--data', '/dev/null/practice']],
    ['a placement of one skill', ['--place', '--skill', 'changeover-legs']],
    ['two places for the answers', ['--data', 'two-places'], { DATABASE_URL: 'postgres://nowhere/none' }],
    ['a database that is not there', [], { DATABASE_URL: 'postgres://nobody@127.0.0.1:1/none' }],
  ])('tells %s in words, with exit code 2', async (_, words, environment = {}) => {
    const { code, err } = await runCommand(
      [
        'drill',
        ...words,
        ...(words.includes('--data') || 'DATABASE_URL' in environment ? [] : ['--data', file('bad')]),
      ],
      { environment },
    );
    expect(code).toBe(2);
    expect(err).not.toMatch(/\n\s+at /);
  });

  it('calls what was left out left out, and what is wrong wrong', async () => {
    const words = ['drill', '--skill', 'make-contact', '--count', '1', '--seed', 'l', '--data'];
    const passed = (await runCommand([...words, file('left-1')], { lines: ['pass'] })).out;
    expect(passed).toContain('Left out. This is right:');
    expect(passed).not.toMatch(/wrong|Not right|you said/);
    const right = [...passed.matchAll(/left out {2}(\S+) +(lit|dark)/g)];
    expect(right.length).toBeGreaterThan(1);
    const [, lamp, state] = right[0]!;
    const other = state === 'lit' ? 'dark' : 'lit';
    const { out } = await runCommand([...words, file('left-2')], { lines: [`${lamp} ${other}`] });
    expect(out).toContain(`wrong     ${lamp}`);
    expect(out).toContain(`${state}, you said ${other}`);
  });

  it.each([24, 30, 60])(
    'shows a small question whole on a terminal of 80 columns and %i rows',
    async (rows) => {
      for (const seed of ['a', 'b', 'c']) {
        const { out } = await runCommand(
          [
            'drill',
            '--skill',
            'make-contact',
            '--count',
            '1',
            '--seed',
            seed,
            '--data',
            file(`rows-${rows}-${seed}`),
          ],
          { lines: ['', 'stop'], rows, interactive: true },
        );
        const shown = out.slice(0, out.indexOf('> ')).split('\n');
        expect(shown.length).toBeLessThanOrEqual(rows);
        for (const line of shown) expect(line.length).toBeLessThanOrEqual(80);
        // All of it: the drawing, what is done, what is asked and how it is written.
        for (const part of ['Question 1 of 1', '-H1', 'drawing', 'Write each lamp'])
          expect(shown.join(' ').replaceAll(/\s+/g, ' ')).toContain(part);
      }
    },
  );

  it('shows no escape characters without colour', async () => {
    const { out } = await runCommand(['drill', '--count', '1', '--data', file('plain')], { lines: ['pass'] });
    expect(out).not.toContain(String.fromCharCode(27));
    const shown = await runCommand(['drill', '--count', '1', '--data', file('colour')], {
      lines: ['pass'],
      colour: true,
    });
    expect(shown.out).toContain(String.fromCharCode(27));
  });
});

describe('where to begin', () => {
  /** `2 -H1` of a sequence is typed `after 2: -H1 lit`; of a meter and a wiring only what is right. */
  const asTyped = (item: string, state: string): string => {
    if (item === 'volts' || item === 'choice') return state;
    const [, after, place] = item.match(/^(\d+) (.*)$/) ?? [];
    return after ? `after ${after}: ${place} ${state}` : `${item} ${state}`;
  };
  const settingsIn = async (data: string) => {
    const store = await openSqliteStore(storeFile(data));
    const settings = await store.settingsOf('me');
    await store.close();
    return settings;
  };

  it('is asked for on the first visit only, where somebody sits at the terminal', async () => {
    const data = file('first');
    const first = await runCommand(['drill', '--count', '1', '--data', data], {
      lines: ['', 'pass'],
      interactive: true,
    });
    expect(first.out).toContain('Where do you want to begin?');
    expect(first.out).toContain('1 question answered and kept.');
    const second = await runCommand(['drill', '--count', '1', '--data', data], {
      lines: ['pass'],
      interactive: true,
    });
    expect(second.out).not.toContain('Where do you want to begin?');
    expect((await settingsIn(data)).placement).toBeNull();
    for (const words of [['--skill', 'changeover-legs'], []]) {
      const { out } = await runCommand(['drill', '--count', '1', ...words, '--data', file(`none-${words}`)], {
        lines: ['pass'],
        interactive: words.length > 0,
      });
      expect(out).not.toContain('Where do you want to begin?');
    }
  });

  it('is asked until there is an answer to it, and stop stops', async () => {
    const asked = await runCommand(['drill', '--count', '1', '--data', file('asked')], {
      lines: ['3', 'find where', 'yes', '1', 'pass'],
      interactive: true,
    });
    expect(asked.out.split('Type 1 or 2, or stop to end.')).toHaveLength(4);
    expect(asked.out).toContain('1 question answered and kept.');
    for (const lines of [['stop'], ['1x', 'quit'], []]) {
      const { out, code } = await runCommand(['drill', '--data', file('no')], { lines, interactive: true });
      expect(code).toBe(0);
      expect(out).toContain('Nothing was asked yet.');
      expect(out).not.toContain('Question 1');
    }
  });

  it('is found in at most eight questions; who knows nothing begins at the beginning', async () => {
    const data = file('nothing');
    const { out, code } = await runCommand(['drill', '--count', '1', '--data', data], {
      lines: ['2', ...Array.from({ length: 30 }, (_, line) => (line % 2 === 0 ? 'pass' : ''))],
      interactive: true,
    });
    expect(code).toBe(0);
    const asked = [...out.matchAll(/Finding where to begin: question (\d)/g)].map(([, number]) => number);
    expect(asked.length).toBeGreaterThan(0);
    expect(asked).toEqual(asked.map((_, index) => `${index + 1}`));
    expect(asked.length).toBeLessThanOrEqual(8);
    expect(out).toContain('You begin at the beginning.');
    const { answers } = await kept(data);
    expect(answers).toHaveLength(asked.length + 1);
    expect((await settingsIn(data)).placement?.known).toEqual([]);
  });

  it('counts what is known as known: practice goes on above it', async () => {
    const data = file('known');
    await runCommand(['drill', '--count', '1', '--seed', 'k', '--data', file('beginner')], {
      lines: ['pass'],
    });
    const typed: string[] = [];
    // An apprentice who knows everything: what is right is what the mark of the same question says.
    for (let asked = 0; asked < 8; asked++) {
      const { out } = await runCommand(
        ['drill', '--place', '--count', '1', '--seed', 'k', '--data', file(`look-${asked}`)],
        { lines: [...typed, 'pass', 'stop'] },
      );
      const marked = out.split('Finding where to begin: question ')[asked + 1];
      if (marked === undefined) break;
      const right = [...marked.matchAll(/^ *left out {2}(\d* ?\S+) +(.+)$/gm)];
      if (right.length === 0) throw new Error(marked);
      typed.push(right.map(([, item = '', state = '']) => asTyped(item, state)).join('; '));
    }
    const { out } = await runCommand(['drill', '--place', '--count', '1', '--seed', 'k', '--data', data], {
      lines: [...typed, 'pass'],
    });
    expect(out).toMatch(/[1-9]\d* of \d+ skills known:/);
    const { placement } = await settingsIn(data);
    expect(placement?.known.length).toBeGreaterThan(0);
    const { answers } = await kept(data);
    const beginning = (await kept(file('beginner'))).answers;
    // Whoever knows something isn't asked what a beginner is asked first.
    expect(placement?.known).toContain(beginning[0]?.skill);
    expect(answers.at(-1)?.skill).not.toBe(beginning[0]?.skill);
  });

  it('ends at once with what has been found, at stop', async () => {
    const data = file('enough');
    const { out } = await runCommand(['drill', '--place', '--count', '1', '--data', data], {
      lines: ['stop', 'stop'],
    });
    expect(out).toContain('You begin at the beginning.');
    expect((await settingsIn(data)).placement?.known).toEqual([]);
  });
});

describe('Ctrl-C', () => {
  it('loses no answer that was marked', async () => {
    const data = file('interrupted');
    const words = ['drill', '--count', '5', '--seed', 'v', '--data', data];
    const child = spawn(process.execPath, [await builtPolewise(), ...words], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    let out = '';
    await new Promise<void>((resolve, reject) => {
      child.on('error', reject);
      child.on('close', () => resolve());
      child.stdout.on('data', (chunk: Buffer) => {
        const before = out;
        out += chunk.toString();
        if (!before.includes('Question 1 of') && out.includes('Question 1 of'))
          child.stdin.write('pass\npass\n');
        // Marked twice and waiting for the third answer: interrupt everything.
        if (!before.includes('Question 3 of') && out.includes('Question 3 of')) child.kill('SIGINT');
      });
    });
    const { answers } = await kept(data);
    expect(answers).toHaveLength(2);
  });
});
