/**
 * Terminal numbers of every kind of device against EN 50005 (withdrawn; carried on in annexes of IEC 60947-1 and
 * IEC 60947-5-1, from memory). What the sources say is written down here by hand; nothing is taken from the code.
 */
import { describe, expect, it } from 'vitest';
import { type DeviceKind, device as deviceSchema } from '../../shared/circuit.ts';
import { anatomyOf, readCircuit, terminalsOf } from '../../src/circuit/index.ts';

function deviceFrom(words: string) {
  const read = readCircuit(`supply A 24 V AC\n-X1 ${words}`);
  if (!read.ok) expect.fail(JSON.stringify(read.problems));
  return read.value.devices[0]!;
}
const terminals = (words: string): string => terminalsOf(deviceFrom(words)).join(' ');
/** Contacts as `13-14 make`, in order. */
const contacts = (words: string): string[] =>
  anatomyOf(deviceFrom(words)).contacts.map(({ from, to, form }) => `${from}-${to} ${form}`);

/** Kind, words, terminals, source. */
const TABLE: readonly (readonly [DeviceKind, string, string, string])[] = [
  ['relay', 'relay 4 poles', 'A1 A2 11 12 14 21 22 24 31 32 34 41 42 44', 'EN 50005'],
  ['contactor', 'contactor 3 main', 'A1 A2 1 2 3 4 5 6', 'EN 50005: main contacts one digit'],
  [
    'contactor',
    'contactor 4 main 22',
    'A1 A2 1 2 3 4 5 6 7 8 13 14 21 22 31 32 43 44',
    'EN 50005; the row from memory',
  ],
  ['on-delay', 'on-delay 1 s 2 poles', 'A1 A2 15 16 18 25 26 28', 'EN 50005, from memory'],
  ['off-delay', 'off-delay 1 s', 'A1 A2 15 16 18', 'EN 50005, from memory'],
  [
    'supplied-off-delay',
    'supplied-off-delay 1 s',
    'A1 A2 B1 15 16 18',
    'EN 50005; B1: common practice, no source',
  ],
  ['flasher', 'flasher 1 s on 1 s off', 'A1 A2 15 16 18', 'EN 50005, from memory'],
  ['latching-relay', 'latching-relay', 'A1 A2 B1 B2 11 12 14', 'second coil B1-B2: EN 50005, from memory'],
  ['push-button', 'push-button make', '13 14', 'EN 50005'],
  ['push-button', 'push-button make break', '13 14 21 22', 'EN 50005'],
  ['emergency-stop', 'emergency-stop break break', '11 12 21 22', 'EN 50005'],
  ['selector', 'selector Off/On make make', '13 14 23 24', 'EN 50005'],
  ['field-contact', 'field-contact changeover', '11 12 14', 'EN 50005'],
  ['limit-switch', 'limit-switch make break', '13 14 21 22', 'EN 50005'],
  ['float-switch', 'float-switch break', '11 12', 'EN 50005'],
  ['overload', 'overload', '1 2 3 4 5 6 95 96 97 98', 'EN 50005, the auxiliaries from memory'],
  ['fuse', 'fuse 3 poles', '1 2 3 4 5 6', 'EN 50005: main contacts one digit'],
  ['breaker', 'breaker 2 poles', '1 2 3 4', 'EN 50005: main contacts one digit'],
  ['isolator', 'isolator 4 poles', '1 2 3 4 5 6 7 8', 'EN 50005: main contacts one digit'],
  ['lamp', 'lamp', 'X1 X2', 'EN 50005'],
  ['valve', 'valve', 'A1 A2', 'a coil: EN 50005'],
  ['motor', 'motor 230 V', 'U1 V1 W1', 'IEC 60034-8, from memory'],
  ['motor', 'motor 400 V 6 terminals', 'U1 V1 W1 U2 V2 W2', 'IEC 60034-8, from memory'],
];

/** Of which no standard numbers the terminals: tests/practice-of-the-trade. */
const NOT_NUMBERED: readonly DeviceKind[] = ['sounder', 'inputs', 'outputs', 'terminals'];

describe('terminals', () => {
  it.each(TABLE)('of a %s (%s) are %s (%s)', (_kind, words, expected) => {
    expect(terminals(words)).toBe(expected);
  });

  it('are checked for every kind of device', () => {
    expect([...new Set([...TABLE.map(([kind]) => kind), ...NOT_NUMBERED])].toSorted()).toEqual(
      deviceSchema.options.map(({ shape }) => shape.kind.value).toSorted(),
    );
  });
});

describe('function digits (EN 50005)', () => {
  it('1-2 break, 3-4 make; 1 common, 2 break leg, 4 make leg', () => {
    expect(contacts('push-button break make changeover')).toEqual([
      '11-12 break',
      '23-24 make',
      '31-32 break',
      '31-34 make',
    ]);
  });

  it('5-6 and 5-8 of a timer are its delayed legs (from memory)', () => {
    expect(contacts('on-delay 1 s')).toEqual(['15-16 break', '15-18 make']);
  });

  it('95-96 breaks and 97-98 makes when an overload trips (from memory)', () => {
    expect(contacts('overload').slice(3)).toEqual(['95-96 break', '97-98 make']);
  });
});

describe('the two-digit figure of a contactor: makes, then breaks (EN 50005)', () => {
  // The rows from memory: one make, all breaks, the other makes, each with its place as sequence digit.
  it.each([
    ['10', ['13-14 make']],
    ['01', ['11-12 break']],
    ['11', ['13-14 make', '21-22 break']],
    ['22', ['13-14 make', '21-22 break', '31-32 break', '43-44 make']],
    ['31', ['13-14 make', '21-22 break', '33-34 make', '43-44 make']],
    ['40', ['13-14 make', '23-24 make', '33-34 make', '43-44 make']],
  ])('%s', (figure, row) => {
    expect(contacts(`contactor 0 main ${figure}`)).toEqual(row);
  });

  it.each(Array.from({ length: 49 }, (_, index) => [Math.floor(index / 7), index % 7]))(
    '%i%i has that many of each, in sequence from 1',
    (makes, breaks) => {
      const row = makes + breaks === 0 ? [] : contacts(`contactor 0 main ${makes}${breaks}`);
      expect(row.filter((each) => each.endsWith('make'))).toHaveLength(makes);
      expect(row.filter((each) => each.endsWith('break'))).toHaveLength(breaks);
      expect(row.map((each) => Number.parseInt(each, 10).toString().slice(0, -1))).toEqual(
        row.map((_, index) => String(index + 1)),
      );
    },
  );
});
