import { describe, expect, it } from 'vitest';
import { readCircuitJson } from '../../src/circuit/index.ts';
import { circuitOf, problemsOf, whole } from './reading.ts';

const SOUND = circuitOf(`supply A 24 V AC
-K3 relay
-S3 selector Off/Auto make
A:L -S3:13-14 -K3:A1-A2 A:N`);

/** The circuit with one part of it replaced. */
const changed = (change: object): unknown => ({ ...JSON.parse(JSON.stringify(SOUND)), ...change });
const codes = (value: unknown): string[] => problemsOf(readCircuitJson(value)).map(({ code }) => code);

describe('a circuit in JSON', () => {
  it('is read from text and from a value', () => {
    expect(whole(readCircuitJson(JSON.stringify(SOUND)))).toEqual(SOUND);
    expect(whole(readCircuitJson(`\ufeff${JSON.stringify(SOUND)}`))).toEqual(SOUND);
    expect(whole(readCircuitJson(changed({})))).toEqual(SOUND);
  });

  it.each([
    ['{', 'bad-json'],
    ['', 'bad-json'],
    ['[]', 'json-shape'],
    ['null', 'json-shape'],
    ['x'.repeat(2_000_001), 'too-large'],
    [undefined, 'json-shape'],
  ])('%.20s is refused', (source, code) => {
    expect(codes(source)).toEqual([code]);
  });

  it('that stops being JSON has the line and the column of it', () => {
    expect(problemsOf(readCircuitJson('{"supplies": [],\n "devices": }'))).toEqual([
      {
        code: 'bad-json',
        line: 2,
        column: 13,
        message: 'This is no JSON: "}" can\'t stand here.',
        hint: expect.stringContaining('JSON'),
      },
    ]);
    expect(problemsOf(readCircuitJson('['))).toMatchObject([
      { line: 1, column: 2, message: 'This is no JSON: it ends too early.' },
    ]);
  });

  it('names the place of each mistake in its shape', () => {
    const devices = [
      { kind: 'relay', name: '-K3', poles: 9, rating: { volts: 24, current: 'XC' } },
      { kind: 'relais', name: '-K4' },
      { kind: 'overload', name: 'F2', extra: 1 },
    ];
    expect(problemsOf(readCircuitJson(changed({ devices }))).map(({ message }) => message)).toEqual([
      'devices[0].poles: The number of poles is at most 4.',
      'devices[0].rating.current: This has to be AC or DC.',
      'devices[1].kind: This kind is none of those there are.',
      'devices[2].name: This is not a designation such as -K3.',
      'devices[2]: There is no field "extra" here.',
    ]);
  });

  it.each([
    ['sheet-not-listed', { sheets: [] }],
    ['duplicate-sheet', { sheets: [{ number: 1 }, { number: 1 }] }],
    ['duplicate-supply', { supplies: [...SOUND.supplies, ...SOUND.supplies] }],
    ['duplicate-designation', { devices: [...SOUND.devices, SOUND.devices[0]] }],
    ['unknown-designation', { devices: SOUND.devices.slice(0, 1) }],
    ['control-character', { title: 'a\nb' }],
    [
      'contact-terminals',
      {
        devices: [
          ...SOUND.devices,
          { kind: 'limit-switch', name: '-B1', contacts: [{ form: 'changeover', terminals: ['11', '12'] }] },
        ],
      },
    ],
    [
      'unknown-position',
      {
        devices: [
          ...SOUND.devices,
          {
            kind: 'limit-switch',
            name: '-B1',
            contacts: [{ form: 'make', terminals: ['13', '14'], positions: ['Auto'] }],
          },
        ],
      },
    ],
  ])('is checked like one in the notation: %s', (code, change) => {
    const problems = problemsOf(readCircuitJson(changed(change)));
    expect(problems.map((problem) => problem.code)).toContain(code);
    expect(problems.every(({ line, column }) => line === undefined && column === undefined)).toBe(true);
  });
});
