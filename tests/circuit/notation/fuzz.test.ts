/** Whatever the reader is given, it reads it or refuses it with a place and a reason, and never throws. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Checked } from '../../../shared/problem.ts';
import {
  checkRules,
  problemOf,
  readActs,
  readCircuit,
  readCircuitJson,
  readCircuitWithPlaces,
  readFaults,
  writeCircuit,
} from '../../../src/circuit/index.ts';
import { ALL_WORDS } from '../../../src/circuit/notation/words.ts';
import { CIRCUIT_CODES } from '../../../src/circuit/problem-codes.ts';
import { told } from '../../support/in-english.ts';
import { anyCircuit } from '../arbitrary-circuit.ts';
import { circuitOf, PATIENCE } from '../reading.ts';

const CODES: ReadonlySet<string> = new Set(Object.values(CIRCUIT_CODES).flat());

/** Each problem has a known code, words, and a place in the text (the end of a line counts). */
function expectPlaced(text: string, checked: Checked<unknown>): void {
  if (checked.ok) return;
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r/);
  expect(checked.problems.length).toBeGreaterThan(0);
  for (const { code, line = 0, column = 0, message, hint } of told(checked.problems)) {
    const there = lines[line - 1];
    const placed = there !== undefined && column >= 1 && column <= there.length + 1;
    if (!placed || !CODES.has(code) || message.length < 10 || hint.length < 5) {
      expect.fail(JSON.stringify({ code, line, column, message, hint, there }));
    }
  }
}

/** What was read is sound enough to be written, read again and checked against the rules. */
function expectUsable(text: string): void {
  const read = readCircuitWithPlaces(text);
  expectPlaced(text, read);
  if (!read.ok) return;
  const { circuit, places } = read.value;
  const written = writeCircuit(circuit);
  expect(circuitOf(written)).toEqual(circuit);
  const findings = checkRules(circuit).map((finding) => problemOf(finding, circuit, places));
  for (const { line = 0 } of findings) expect(line).toBeGreaterThan(0);
}

const word = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...ALL_WORDS) },
  {
    weight: 2,
    arbitrary: fc.constantFrom('-K1', '-K2', '-S3', '-H1', '-X1', 'A', 'B', 'K3', '-k1', '-ABCD1'),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      'A:L',
      'A:N',
      '-K1:A1-A2',
      '-K1:11-14',
      '-H1:X1-X2',
      '-X1:3',
      '-K1:',
      ':',
      '-S3:13-14',
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom('2', '24', '0.5', '9', '22', '1e9', '-3', '3,3', '24V', '13-14', 'Off/On'),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('"text"', '""', '"open', '"a\\"b"', '"\\x"', '#', '\u2212K1', '\u0000'),
  },
);
const soup = fc
  .array(fc.array(word, { maxLength: 7 }), { maxLength: 12 })
  .map((lines) => ['supply A 24 V AC', ...lines.map((words) => words.join(' '))].join('\n'));

/** A sound circuit with pieces of its text taken out, doubled, exchanged or replaced. */
const mutated = fc
  .tuple(
    anyCircuit.map(writeCircuit),
    fc.array(
      fc.tuple(
        fc.constantFrom('cut', 'double', 'insert', 'swap'),
        fc.nat(),
        fc.integer({ min: 1, max: 12 }),
        fc.oneof(fc.string({ unit: 'binary', maxLength: 4 }), word),
      ),
      { minLength: 1, maxLength: 4 },
    ),
  )
  .map(([text, changes]) =>
    changes.reduce((now, [change, where, length, extra]) => {
      const at = now.length === 0 ? 0 : where % now.length;
      const [before, piece, after] = [now.slice(0, at), now.slice(at, at + length), now.slice(at + length)];
      switch (change) {
        case 'cut':
          return before + after;
        case 'double':
          return before + piece + piece + after;
        case 'swap':
          return before + after.slice(0, length) + piece + after.slice(length);
        default:
          return before + extra + piece + after;
      }
    }, text),
  );

describe('any text', () => {
  it(
    'of random characters is read or refused with a place',
    () => {
      fc.assert(
        fc.property(fc.string({ unit: 'binary', maxLength: 120 }), (text) => {
          expectPlaced(text, readCircuit(text));
        }),
        { numRuns: 6000 },
      );
    },
    PATIENCE,
  );

  it(
    'of words in any order is read or refused with a place',
    () => {
      fc.assert(fc.property(soup, expectUsable), { numRuns: 12_000 });
    },
    PATIENCE,
  );

  it(
    'that was a circuit before it was spoilt is read or refused with a place',
    () => {
      fc.assert(fc.property(mutated, expectUsable), { numRuns: 3500 });
    },
    PATIENCE,
  );

  it(
    'given as acts or faults is read or refused with a place',
    () => {
      const circuit = circuitOf(
        'supply A 24 V AC\n-K1 relay\n-S3 selector Off/On make\nA:L -S3:13-14 -K1:A1-A2 A:N',
      );
      const statement = fc
        .array(
          fc.oneof(
            word,
            fc.constantFrom(
              'press',
              'turn',
              'hold',
              'on',
              'fail',
              'wait',
              'broken',
              'welded',
              'dirty',
              'crossed',
              'stuck',
              ';',
            ),
          ),
          { maxLength: 12 },
        )
        .map((words) => words.join(' '));
      fc.assert(
        fc.property(fc.oneof(statement, fc.string({ unit: 'binary' })), (text) => {
          expectPlaced(text, readActs(text));
          expectPlaced(text, readActs(text, circuit));
          expectPlaced(text, readFaults(text));
          expectPlaced(text, readFaults(text, circuit));
        }),
        { numRuns: 4000 },
      );
    },
    PATIENCE,
  );

  it(
    'given as JSON is read or refused with a reason',
    () => {
      const anything = fc.oneof(
        fc.json(),
        fc.string(),
        fc.anything(),
        anyCircuit.map((circuit) => JSON.stringify(circuit).slice(1)),
      );
      fc.assert(
        fc.property(anything, (value) => {
          const checked = readCircuitJson(value);
          if (checked.ok) expect(readCircuitJson(checked.value)).toEqual(checked);
          else for (const { message, hint } of told(checked.problems)) expect(message && hint).toBeTruthy();
        }),
        { numRuns: 2000 },
      );
    },
    PATIENCE,
  );
});
