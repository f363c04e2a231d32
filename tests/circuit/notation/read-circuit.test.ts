import { describe, expect, it } from 'vitest';
import { readCircuit, readCircuitWithPlaces, writeCircuit } from '../../../src/circuit/index.ts';
import { circuitOf, problemsOf, whole } from '../reading.ts';

const FAN = `# Vent fan 2: running and tripped
supply A 24 V AC
-F1  breaker       "Control supply"
-B1  field-contact make "Fan tripped"
-K3  relay 2 poles

A:L  -F1:1-2  -B1:13-14  -K3:A1-A2  A:N
`;

const deviceIn = (line: string, supply = 'supply A 24 V AC') => circuitOf(`${supply}\n${line}`).devices[0];

describe('reading a circuit', () => {
  it('gives the data of shared/circuit.ts, everything written out', () => {
    expect(circuitOf(FAN)).toEqual({
      title: 'Vent fan 2: running and tripped',
      supplies: [{ name: 'A', volts: 24, current: 'AC', earthed: false }],
      devices: [
        { kind: 'breaker', name: '-F1', poles: 1, text: 'Control supply' },
        {
          kind: 'field-contact',
          name: '-B1',
          contacts: [{ form: 'make', terminals: ['13', '14'] }],
          text: 'Fan tripped',
        },
        { kind: 'relay', name: '-K3', poles: 2, rating: { volts: 24, current: 'AC' } },
      ],
      sheets: [{ number: 1 }],
      paths: [
        {
          sheet: 1,
          steps: [
            { device: 'A', enter: 'L' },
            { device: '-F1', enter: '1', leave: '2' },
            { device: '-B1', enter: '13', leave: '14' },
            { device: '-K3', enter: 'A1', leave: 'A2' },
            { device: 'A', enter: 'N' },
          ],
        },
      ],
    });
  });

  it.each([
    ['Windows line ends', FAN.replaceAll('\n', '\r\n')],
    ['a byte order mark', `\ufeff${FAN}`],
    ['tabs and blanks at the ends', FAN.replaceAll('  ', '\t').replaceAll('\n', ' \t\n')],
    ['indented lines', FAN.replaceAll('\n', '\n   ')],
    ['comments in between', FAN.replaceAll('\n', '\n# a remark\n')],
    [
      'devices after the paths that use them',
      `${FAN.split('\n').toReversed().join('\n')}`.replace(/# .*/, ''),
    ],
  ])('minds no %s', (_what, text) => {
    expect(circuitOf(text).paths).toEqual(circuitOf(FAN).paths);
    expect(circuitOf(text).devices).toHaveLength(3);
  });

  it('minds no byte order mark before a supply, and counts columns without it', () => {
    expect(circuitOf('\ufeffsupply A 24 V AC').supplies).toHaveLength(1);
    expect(problemsOf(readCircuit('\ufeffsupply b 24 V AC'))).toMatchObject([{ line: 1, column: 8 }]);
  });

  it('takes the first comment as the title only if nothing stands before it', () => {
    expect(circuitOf('\n#   Ice works  \nsupply A 24 V AC').title).toBe('Ice works');
    expect(circuitOf('supply A 24 V AC\n# remark')).not.toHaveProperty('title');
    expect(circuitOf('#\n# "  quoted \\"title\\"  "\nsupply A 24 V AC').title).toBe('  quoted "title"  ');
  });

  it('rates coils and loads like the first supply that is no three-phase one', () => {
    const text =
      'supply P 400 V 3AC\nsupply B 24 V DC\nsupply A 230 V AC\n-K1 relay\n-H1 lamp 12 V AC\n-Y1 valve';
    expect(circuitOf(text).devices).toMatchObject([
      { rating: { volts: 24, current: 'DC' } },
      { rating: { volts: 12, current: 'AC' } },
      { rating: { volts: 24, current: 'DC' } },
    ]);
  });

  it('numbers contacts by their place in the list', () => {
    expect(deviceIn('-S1 push-button make break changeover make 47-48')).toMatchObject({
      contacts: [
        { form: 'make', terminals: ['13', '14'] },
        { form: 'break', terminals: ['21', '22'] },
        { form: 'changeover', terminals: ['31', '32', '34'] },
        { form: 'make', terminals: ['47', '48'] },
      ],
    });
  });

  it('tells positions, terminal numbers and the next contact of a selector apart', () => {
    expect(deviceIn('-S3 selector 0/1/2 make 1 break 1+2 23-24 make 33-34 make')).toMatchObject({
      positions: ['0', '1', '2'],
      contacts: [
        { form: 'make', terminals: ['13', '14'], positions: ['1'] },
        { form: 'break', terminals: ['23', '24'], positions: ['1', '2'] },
        { form: 'make', terminals: ['33', '34'] },
        { form: 'make', terminals: ['43', '44'] },
      ],
    });
  });

  it('tells the figure of a contactor from its voltage', () => {
    expect(deviceIn('-K1 contactor 22 24 V DC')).toMatchObject({
      mains: 3,
      rating: { volts: 24, current: 'DC' },
    });
    expect(deviceIn('-K1 contactor 22 V DC')).toMatchObject({ contacts: [], rating: { volts: 22 } });
    expect(deviceIn('-K1 contactor 4 main 01 "x"')).toMatchObject({
      mains: 4,
      contacts: [{ form: 'break', terminals: ['11', '12'] }],
    });
  });

  it('reads times in ms, s and min, and numbers with the unit at once', () => {
    expect(deviceIn('-K5 on-delay 500ms')).toMatchObject({ seconds: 0.5 });
    expect(deviceIn('-K5 off-delay 2 min')).toMatchObject({ seconds: 120 });
    expect(deviceIn('-K7 flasher 250 ms off 1s on')).toMatchObject({ on: 1, off: 0.25 });
    expect(deviceIn('-F1 fuse 2poles 6.3A')).toMatchObject({ poles: 2, amps: 6.3 });
  });

  it('gives the first text to a controller and the others to its points', () => {
    expect(deviceIn('-A1 inputs 4 24V-3 "Controller" "Run" "Trip"')).toMatchObject({
      text: 'Controller',
      points: ['Run', 'Trip'],
    });
    const unnamed = deviceIn('-A1 inputs 2 3.3V points "Run" ""');
    expect(unnamed).toMatchObject({ points: ['Run', ''] });
    expect(unnamed).not.toHaveProperty('text');
  });

  it('puts paths on the sheet last named', () => {
    const text = 'supply A 24 V AC\nA:L A:N\nsheet 2 "Inputs"\nA:L A:N\nA:N A:L\nsheet 1 "Supplies"\nA:L A:N';
    expect(circuitOf(text)).toMatchObject({
      sheets: [
        { number: 1, title: 'Supplies' },
        { number: 2, title: 'Inputs' },
      ],
      paths: [{ sheet: 1 }, { sheet: 2 }, { sheet: 2 }, { sheet: 1 }],
    });
  });

  it('reads a sign as part of the terminal before it', () => {
    const text = 'supply B 24 V DC\n-B1 field-contact make L+-L-\nB:L+ -B1:L+-L- B:L-';
    expect(circuitOf(text).paths[0]?.steps[1]).toEqual({ device: '-B1', enter: 'L+', leave: 'L-' });
  });

  it('lets a path lead through several parts in a row inside a device', () => {
    const text = 'supply A 24 V AC\n-K1 relay\n-M1 motor 230 V\nA:L -K1:12-14 -M1:U1-W1 A:N';
    expect(circuitOf(text).paths[0]?.steps).toHaveLength(4);
  });

  it('says where every part stands', () => {
    const text = '\nsupply A 24 V AC\n  -K3 relay "x"\nsheet 2\nA:L  -K3:A1-A2  A:N\n';
    const { circuit, places } = whole(readCircuitWithPlaces(text));
    expect(places.supplies[0]).toMatchObject({ line: 2, column: 1 });
    expect(places.devices[0]).toMatchObject({ line: 3, column: 3 });
    expect(places.devices[0]?.fields.get('text')).toBe(13);
    expect(places.sheets[0]).toEqual({ line: 4, column: 1 });
    expect(places.steps[0]).toEqual([1, 6, 17].map((column) => ({ line: 5, column })));
    expect(places.paths[0]).toEqual({ line: 5, column: 1 });
    expect(circuit.paths).toHaveLength(1);
  });
});

describe('hostile sizes', () => {
  const refusal = (text: string) => problemsOf(readCircuit(text));

  it.each([
    ['characters', 'x'.repeat(2_000_001), 'at most 2000000'],
    ['lines', '\n'.repeat(10_000), 'at most 10000'],
    ['a line', `\n${' '.repeat(4001)}`, 'at most 4000'],
    [
      'devices',
      `supply A 24 V AC\n${Array.from({ length: 2001 }, (_, n) => `-K${n} relay`).join('\n')}`,
      'at most 2000',
    ],
    ['paths', `supply A 24 V AC\n${'A:L A:N\n'.repeat(4001)}`, 'at most 4000'],
    ['stops', `supply A 24 V AC\n${`${'A:L A:N '.repeat(30)}\n`.repeat(700)}`, 'at most 40000'],
    [
      'terminals',
      `supply A 24 V AC\n${Array.from({ length: 400 }, (_, n) => `-X${n} terminals 60`).join('\n')}`,
      'at most 20000',
    ],
  ])('of %s are refused with the limit', (_what, text, limit) => {
    const problems = refusal(text);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: 'too-large' });
    expect(problems[0]?.message).toContain(limit);
    expect(problems[0]?.line).toBeGreaterThan(0);
  });

  it('of supplies and sheets are refused too', () => {
    const nine = Array.from('ABCDEFGHI', (letter) => `supply ${letter} 24 V AC`).join('\n');
    expect(refusal(nine)).toMatchObject([{ code: 'out-of-range', line: 1 }]);
  });

  it('just inside the limits are read', () => {
    const devices = Array.from({ length: 2000 }, (_, n) => `-K${n} relay`);
    const paths = devices.map((_, n) => `A:L -K${n}:A1-A2 A:N`);
    const circuit = circuitOf(['supply A 24 V AC', ...devices, ...paths].join('\n'));
    expect(circuit.devices).toHaveLength(2000);
    expect(circuitOf(writeCircuit(circuit))).toEqual(circuit);
  });
});
