/** Terminals that no standard numbers. Common practice, no source. */
import { expect, it } from 'vitest';
import { readCircuit, terminalsOf } from '../../src/circuit/index.ts';

it.each([
  ['sounder', 'X1 X2'],
  ['inputs 3 24V-1', 'I1 I2 I3 COM'],
  ['outputs 2', 'COM Q1 Q2'],
  ['terminals 3', '1 2 3'],
])('the terminals of %s are %s', (words, expected) => {
  const read = readCircuit(`supply A 24 V AC\n-X1 ${words}`);
  if (!read.ok) expect.fail(JSON.stringify(read.problems));
  expect(terminalsOf(read.value.devices[0]!).join(' ')).toBe(expected);
});
