import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCircuit, readCircuitJson, writeCircuit } from '../../../src/circuit/index.ts';
import { anyCircuit, deviceOfKind, KINDS } from '../arbitrary-circuit.ts';
import { circuitOf, PATIENCE, whole } from '../reading.ts';

describe('writing a circuit', () => {
  it(
    'reads back as the same circuit, whatever is in it',
    () => {
      fc.assert(
        fc.property(anyCircuit, (circuit) => {
          expect(whole(readCircuit(writeCircuit(circuit)))).toEqual(circuit);
        }),
        { numRuns: 800 },
      );
    },
    PATIENCE,
  );

  it.each(KINDS)(
    'reads back every %s',
    (kind) => {
      const supplies = [{ name: 'A', volts: 24, current: 'DC' as const, earthed: false }];
      fc.assert(
        fc.property(deviceOfKind(kind), (device) => {
          const circuit = { supplies, devices: [device], sheets: [], paths: [] };
          expect(whole(readCircuit(writeCircuit(circuit)))).toEqual(circuit);
        }),
        { numRuns: 150 },
      );
    },
    PATIENCE,
  );

  it(
    'writes what it has read exactly as it was written',
    () => {
      fc.assert(
        fc.property(anyCircuit, (circuit) => {
          const text = writeCircuit(circuit);
          expect(writeCircuit(circuitOf(text))).toBe(text);
        }),
        { numRuns: 300 },
      );
    },
    PATIENCE,
  );

  it(
    'survives JSON',
    () => {
      fc.assert(
        fc.property(anyCircuit, (circuit) => {
          expect(whole(readCircuitJson(JSON.stringify(circuit)))).toEqual(circuit);
        }),
        { numRuns: 300 },
      );
    },
    PATIENCE,
  );

  it('leaves out what a line may leave out, and puts options in one order', () => {
    const text = [
      'supply A "Control" earthed 24V AC',
      '-K1  "Pump" contactor',
      '-K2  relay 24 V AC 1 pole "Chain"',
      '-K3  contactor make 13-14 break 21-22 break 31-32 make 43-44 3 main',
      '-S3  selector Off/Auto make Auto 13-14 break 21-22',
      '-K5  on-delay 24 V AC 500 ms',
      '-K6  off-delay 2 min 1 pole',
      '-A1  inputs 24V-1 2 points "One"',
    ].join('\n');
    expect(writeCircuit(circuitOf(text.replace('"Pump" contactor', 'contactor "Pump" 20')))).toBe(
      [
        'supply A 24 V AC earthed "Control"',
        '-K1  contactor 3 main 20 "Pump"',
        '-K2  relay "Chain"',
        '-K3  contactor 3 main 22',
        '-S3  selector Off/Auto make Auto break',
        '-K5  on-delay 0.5 s',
        '-K6  off-delay 120 s',
        '-A1  inputs 2 24V-1 points "One"',
        '',
      ].join('\n'),
    );
  });

  it('names sheets in the order of the list and goes back to one by its number', () => {
    const steps = [
      { device: 'A', enter: 'L' },
      { device: 'A', enter: 'N' },
    ];
    const text = writeCircuit({
      supplies: [{ name: 'A', volts: 24, current: 'AC', earthed: false }],
      devices: [],
      sheets: [{ number: 1 }, { number: 7, title: 'Spare' }, { number: 3 }],
      paths: [1, 3, 1].map((sheet) => ({ sheet, steps })),
    });
    expect(text).toBe(
      'supply A 24 V AC\n\nA:L  A:N\nsheet 7 "Spare"\nsheet 3\nA:L  A:N\nsheet 1\nA:L  A:N\n',
    );
  });
});
