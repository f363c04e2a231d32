/** Whatever a bank file holds, it is read or refused with a place and a reason, and never throws. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { topic as topicSchema } from '../../shared/bank.ts';
import { BANK_CODES, readBank, readTopic } from '../../src/banks/index.ts';
import { CIRCUIT_CODES } from '../../src/circuit/problem-codes.ts';
import { QUESTION_CODES } from '../../src/questions/index.ts';
import { everyRule } from '../../src/solver/index.ts';
import { told } from '../support/in-english.ts';
import { SAMPLE } from './sample.ts';

const folder = new URL('../../question-banks/', import.meta.url);
const REAL = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8'));

const CODES: ReadonlySet<string> = new Set([
  ...[BANK_CODES, ...Object.values(CIRCUIT_CODES), QUESTION_CODES].flat(),
  ...everyRule.map(({ name }) => name),
]);

/** Each problem has a known code, words, and a place in the file (the end of a line counts). */
function expectReadOrPlaced(text: string): 'read' | 'refused' {
  const read = readTopic('sample.md', text);
  if (read.ok) {
    expect(topicSchema.safeParse(read.value).success).toBe(true);
    return 'read';
  }
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r/);
  expect(read.problems.length).toBeGreaterThan(0);
  for (const { file, code, line = 0, column = 0, message, hint } of told(read.problems)) {
    const there = lines[line - 1];
    const placed = there !== undefined && column >= 1 && column <= there.length + 1;
    if (!placed || file !== 'sample.md' || !CODES.has(code) || message.length < 10 || hint.length < 5)
      expect.fail(JSON.stringify({ code, line, column, message, hint, there }));
  }
  return 'refused';
}

/** Pieces that mean something somewhere in a bank file. */
const piece = fc.constantFrom(
  ...[
    '---\n',
    '```circuit id=a\n',
    '```drawing circuit=fan\n',
    '```question id=b skill=first-skill kind=meter\n',
  ],
  ...[
    '```\n',
    '~~~',
    'supply A 24 V AC\n',
    '-K1 relay 2 poles\n',
    'A:L  -K1:A1-A2  A:N\n',
    'do: press -S1\n',
  ],
  ...['asked: -H1\n', 'answer: -H1 lit\n', 'shows: -H1 dark\n', 'fault: -K1:14 broken\n', 'start: dead\n'],
  ...['circuit:\n', 'rules: off common-unused because x\n', 'points: -K1:11 A:N\n', 'because: x\n', '  '],
  ...['## Title\n', '### Part\n', '# One\n', '> quote\n', '- item\n', '1. item\n', '| a | b |\n|---|---|\n'],
  ...[
    '<b>',
    '<!-- x -->',
    '![a](b)',
    '[a](b.md)',
    '[a]: b\n',
    '***\n',
    '    code\n',
    '\\\n',
    '*a_',
    '`',
    '&amp;',
  ],
  ...[
    'id: sample\n',
    'skills:\n',
    '  - id: x\n',
    'needs: [a]\n',
    'title: x\n',
    'order: 1\n',
    '{',
    '[',
    '&a ',
    '*a',
  ],
  ...[
    '\n',
    '\n\n',
    '\t',
    ' ',
    '"',
    "'",
    ':',
    '|\n',
    '>-\n',
    '?',
    '\u0000',
    '\u202e',
    '\ud800',
    '\ufeff',
    '\r',
    '\u00a0',
  ],
);

/** A text with pieces cut out, doubled, exchanged with their neighbours, or put in. */
const mutationOf = (texts: readonly string[]) =>
  fc
    .tuple(
      fc.constantFrom(...texts),
      fc.array(
        fc.tuple(
          fc.constantFrom('cut', 'double', 'put in', 'exchange'),
          fc.nat(),
          fc.integer({ min: 1, max: 30 }),
          fc.oneof(piece, fc.string({ unit: 'binary', maxLength: 4 })),
        ),
        { minLength: 1, maxLength: 3 },
      ),
    )
    .map(([text, changes]) =>
      changes.reduce((now, [change, where, length, extra]) => {
        const at = now.length === 0 ? 0 : where % now.length;
        const [before, middle, after] = [
          now.slice(0, at),
          now.slice(at, at + length),
          now.slice(at + length),
        ];
        switch (change) {
          case 'cut':
            return before + after;
          case 'double':
            return before + middle + middle + after;
          case 'exchange':
            return before + after.slice(0, length) + middle + after.slice(length);
          default:
            return before + extra + middle + after;
        }
      }, text),
    );

const FRONT = SAMPLE.slice(0, SAMPLE.indexOf('\n---\n') + 5);
const pieces = fc.array(piece, { maxLength: 40 }).map((all) => all.join(''));

describe('any file', () => {
  it('of random characters is read or refused with a place', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        expectReadOrPlaced(text);
      }),
      { numRuns: 5000 },
    );
  });

  it('of random characters as front matter and lesson is read or refused with a place', () => {
    const text = fc.string({ unit: 'binary', maxLength: 100 });
    fc.assert(
      fc.property(text, text, (front, lesson) => {
        expectReadOrPlaced(`---\n${front}\n---\n${lesson}`);
        expectReadOrPlaced(FRONT + lesson);
      }),
      { numRuns: 4000 },
    );
  });

  it('that the Markdown library itself gives up on is refused at its line', () => {
    const lesson = 'Some words.\n\n  - id: x\n\t>-\n?';
    const read = readTopic('sample.md', FRONT + lesson);
    if (read.ok) throw new Error('it was read');
    const problem = read.problems.find(({ code }) => code === 'bank-markdown');
    const line = (FRONT + lesson).split('\n').indexOf('\t>-') + 1;
    expect(problem?.line).toBeGreaterThanOrEqual(line);
    expect(problem?.line).toBeLessThanOrEqual(line + 1);
  });

  it('of pieces in any order is read or refused with a place', () => {
    fc.assert(
      fc.property(pieces, pieces, (front, lesson) => {
        expectReadOrPlaced(`---\n${front}\n---\n${lesson}`);
        expectReadOrPlaced(FRONT + lesson);
      }),
      { numRuns: 5000 },
    );
  });

  it('that is a small topic with changes is read or refused with a place', () => {
    const seen = { read: 0, refused: 0 };
    fc.assert(
      fc.property(mutationOf([SAMPLE]), (text) => {
        seen[expectReadOrPlaced(text)]++;
      }),
      { numRuns: 2000 },
    );
    expect(Math.min(seen.read, seen.refused)).toBeGreaterThan(100);
  });

  it('that is a real bank with changes is read or refused with a place', () => {
    fc.assert(
      fc.property(mutationOf(REAL), (text) => {
        expectReadOrPlaced(text);
      }),
      { numRuns: 200 },
    );
  });
});

describe('any bank', () => {
  it('of changed files is read or refused, each problem in one of its files', () => {
    const changed = mutationOf([
      SAMPLE,
      SAMPLE.replaceAll('-skill', '-other').replace('id: sample', 'id: other'),
    ]);
    fc.assert(
      fc.property(fc.array(changed, { maxLength: 3 }), (texts) => {
        const read = readBank(texts.map((text, index) => ({ file: `${index}.md`, text })));
        if (!read.ok)
          for (const { file } of read.problems) expect(texts[Number.parseInt(file!, 10)]).toBeDefined();
      }),
      { numRuns: 500 },
    );
  });
});
