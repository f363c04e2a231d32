/** The documentation of the notation and of its problems says what the source does. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  checkRules,
  drawingRules,
  LIMITS,
  readActs,
  readCircuit,
  readCircuitJson,
  readFaults,
  terminalsOf,
  writeCircuit,
} from '../../src/circuit/index.ts';
import { VERBS } from '../../src/circuit/notation/possible-acts.ts';
import { ALL_WORDS, KINDS } from '../../src/circuit/notation/words.ts';
import { CIRCUIT_CODES } from '../../src/circuit/problem-codes.ts';
import { english } from '../support/in-english.ts';
import { circuitOf, whole } from './reading.ts';

const page = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');
const notation = page('notation.md');
const blocks = (language: string): string[] =>
  [...notation.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].flatMap((m) => (m[1] === language ? [m[2]!] : []));
const rows = (text: string): string[][] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .map((line) => line.slice(2, -2).split(' | '));
const section = (title: string): string =>
  notation.split(/^## /m).find((part) => part.startsWith(title)) ?? '';
const unquoted = (cell: string): string[] => [...cell.matchAll(/`([^`]+)`/g)].map((match) => match[1]!);

describe('docs/notation.md', () => {
  it.each(blocks('circuit').map((text) => [text.split('\n')[0], text]))(
    'has a circuit that is read, kept and within the drawing rules: %s',
    (_title, text) => {
      const circuit = circuitOf(text);
      expect(circuitOf(writeCircuit(circuit))).toEqual(circuit);
      expect(checkRules(circuit)).toEqual([]);
    },
  );

  it('has several of them', () => {
    expect(blocks('circuit').length).toBeGreaterThanOrEqual(3);
  });

  const devices = rows(section('Devices')).filter(([kind]) => kind !== 'kind' && !kind?.startsWith('-'));

  it.each(devices)('has a %s whose example is read and has those terminals', (kind, example, terminals) => {
    const [line = ''] = unquoted(example ?? '');
    const [device] = circuitOf(`supply A 24 V AC\n${line}`).devices;
    expect(device?.kind).toBe(kind);
    expect(device && terminalsOf(device).join(' ')).toBe(terminals);
  });

  it('has an example of every kind of device', () => {
    expect([...new Set(devices.map(([kind]) => kind))].toSorted()).toEqual(KINDS.toSorted());
  });

  it('has every word in its grammar', () => {
    const [grammar = ''] = blocks('ebnf');
    const words = new Set([...grammar.matchAll(/"([^"]+)"/g)].map((match) => match[1]));
    // "mains" and "terminal" are read as slips of "main" and "terminals".
    expect([...ALL_WORDS].filter((each) => !words.has(each))).toEqual([]);
  });

  it('has acts and faults that are read', () => {
    const circuit = circuitOf(`supply A 24 V AC
-F1 fuse
-F2 overload
-S1 push-button make
-S3 selector Off/Auto make
-B1 field-contact make
-K3 relay
-H2 lamp
-A2 outputs 2
A:L -F1:1-2 -S1:13-14 -K3:A1-A2 A:N
-F1:2 -K3:11-14 -H2:X1-X2 A:N`);
    const [acts = [], faults = []] = section('Acts and faults')
      .split('Faults are there')
      .map((part) => rows(part).flatMap(([cell]) => unquoted(cell ?? '')));
    for (const text of acts) expect(whole(readActs(text, circuit))).toHaveLength(1);
    for (const text of faults) expect(whole(readFaults(text, circuit))).toHaveLength(1);
    expect(new Set(acts.map((text) => text.split(' ')[0]))).toEqual(new Set(VERBS));
    expect(faults).toHaveLength(9);
  });

  it('has a JSON example that is the circuit it shows', () => {
    const circuit = whole(readCircuitJson(blocks('json')[0]));
    expect(circuitOf(writeCircuit(circuit))).toEqual(circuit);
  });

  it('has ranges of values that are those of the reader', () => {
    const ranges = rows(section('Limits')).filter(([what]) => what !== 'what');
    expect(ranges.length).toBeGreaterThan(10);
    for (const [what, most = '', refused = ''] of ranges) {
      const reading = (cell: string) =>
        readCircuit(`supply A 24 V AC\n${unquoted(cell)[0]}\nA:L -H9:X1-X2 A:N\n-H9 lamp`);
      expect(reading(most), what).toMatchObject({ ok: true });
      expect(reading(refused), what).toMatchObject({
        ok: false,
        problems: [
          { code: expect.stringMatching(/^(out-of-range|too-large|bad-number|json-shape)$/), line: 2 },
        ],
      });
    }
  });

  it('says how numbers are written and in which order words may stand, as they are read', () => {
    const device = (line: string) => circuitOf(`supply A 24 V AC\n${line}`).devices[0];
    expect(device('-F1 fuse 1.5e2 A')).toEqual(device('-F1 fuse 150 A'));
    expect(device('-K5 on-delay 5e-2 s')).toEqual(device('-K5 on-delay 50ms'));
    for (const wrong of ['.5', '5.', '1.2.3', '+5', '-5', '1,5'])
      expect(readCircuit(`supply A 24 V AC\n-F1 fuse ${wrong} A`).ok, wrong).toBe(false);
    for (const [free, written] of [
      ['-K3 relay "Fan" 24 V DC 2 poles', '-K3 relay 2 poles 24 V DC "Fan"'],
      ['-H1 lamp "On" 5 W 24 V AC green', '-H1 lamp green 5 W 24 V AC "On"'],
      ['-K7 flasher 1 s off "Flash" 2 s on', '-K7 flasher 2 s on 1 s off "Flash"'],
      ['-A1 inputs 24V-3 "PLC" "One" 4', '-A1 inputs 4 24V-3 "PLC" "One"'],
      ['-S3 selector "Mode" Off/Auto make Auto', '-S3 selector Off/Auto make Auto "Mode"'],
    ])
      expect(device(free!)).toEqual(device(written!));
    expect(circuitOf('supply B "Spare" earthed 24 V AC').supplies).toEqual(
      circuitOf('supply B 24 V AC earthed "Spare"').supplies,
    );
    expect(readCircuit('supply A 24 V AC\n-S3 selector make Off/Auto').ok).toBe(false);
    expect(device('-S3 selector make Auto Off/Auto')).toEqual(device('-S3 selector Off/Auto make Auto'));
    expect(circuitOf('#\n\n# Title\n# not it\nsupply A 24 V AC').title).toBe('Title');
    expect(circuitOf('supply A 24 V AC\n# too late').title).toBeUndefined();
    const [fault] = whole(readFaults('-K3:11-14 dirty', circuitOf('supply A 24 V AC\n-K3 relay')));
    expect(fault).toMatchObject({ ohms: 1000 });
  });

  it('states every limit', () => {
    const figures = section('Limits').replaceAll(',', '');
    for (const limit of Object.values(LIMITS)) expect(figures).toMatch(new RegExp(`\\b${limit}\\b`));
  });
});

describe('docs/errors.md', () => {
  const table = rows(page('errors.md')).filter(([code]) => code?.startsWith('`'));
  const rowsFrom = (source: string) => table.filter(([, from]) => from === source);

  it.each([
    ['notation', CIRCUIT_CODES.notation],
    ['JSON', CIRCUIT_CODES.JSON],
    ['acts and faults', CIRCUIT_CODES.scenario],
  ] as const)('has the codes of the source for %s with their meanings, and no others', (source, codes) => {
    expect(rowsFrom(source).map(([code]) => code)).toEqual(codes.map((code) => `\`${code}\``));
    for (const [, , meaning] of rowsFrom(source)) expect(meaning).toMatch(/^[A-Z].*\.$/);
  });

  it('has the drawing rules with their reasons and sources, and no others', () => {
    expect(rowsFrom('drawing rule')).toEqual(
      drawingRules.map(({ name }) => [
        `\`${name}\``,
        'drawing rule',
        `${english.ruleReasons[name as keyof typeof english.ruleReasons]} Source: ${english.ruleSources[name as keyof typeof english.ruleSources]}.`,
      ]),
    );
  });

  it('has each code once', () => {
    const codes = table.map(([code]) => code);
    expect(codes).toEqual([...new Set(codes)]);
  });
});
