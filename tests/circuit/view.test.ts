import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  circuitView,
  conductorsOf,
  deviceOf,
  parseTerminalList,
  parseTerminalRef,
  placeOf,
  readCircuitWithPlaces,
  stepText,
  terminalRefOf,
  terminalsOf,
  wiresOf,
} from '../../src/circuit/index.ts';
import { anyCircuit } from './arbitrary-circuit.ts';
import { circuitOf, PATIENCE, whole } from './reading.ts';

const CIRCUIT = circuitOf(`supply A 24 V AC
-F1 fuse
-K1 relay
-H1 lamp
A:L  -F1:1-2  -K1:A1-A2  A:N
-F1:2  -K1:11-14  -H1:X1-X2
A:N  -H1:X2`);

describe('wires', () => {
  it('go from where one stop is left to where the next is entered', () => {
    expect(wiresOf(CIRCUIT)).toEqual([
      { from: 'A:L', to: '-F1:1', path: 0, step: 1 },
      { from: '-F1:2', to: '-K1:A1', path: 0, step: 2 },
      { from: '-K1:A2', to: 'A:N', path: 0, step: 3 },
      { from: '-F1:2', to: '-K1:11', path: 1, step: 1 },
      { from: '-K1:14', to: '-H1:X1', path: 1, step: 2 },
      { from: 'A:N', to: '-H1:X2', path: 2, step: 1 },
    ]);
  });
});

describe('conductors', () => {
  it('are the terminals that wires join, and every other terminal by itself', () => {
    const { groups, of } = conductorsOf(CIRCUIT);
    expect(groups.filter((group) => group.length > 1)).toEqual([
      ['A:L', '-F1:1'],
      ['A:N', '-K1:A2', '-H1:X2'],
      ['-F1:2', '-K1:A1', '-K1:11'],
      ['-K1:14', '-H1:X1'],
    ]);
    expect(groups.filter((group) => group.length === 1)).toEqual([['-K1:12']]);
    expect(of.get('-K1:A1')).toBe(of.get('-F1:2'));
  });

  it(
    'are the same as a plain search from terminal to terminal finds',
    () => {
      fc.assert(
        fc.property(anyCircuit, (circuit) => {
          const { groups } = conductorsOf(circuit);
          const wires = wiresOf(circuit);
          for (const group of groups) {
            const found = new Set([group[0]!]);
            for (const at of found)
              for (const { from, to } of wires) {
                if (from === at) found.add(to);
                if (to === at) found.add(from);
              }
            expect(found).toEqual(new Set(group));
          }
        }),
        { numRuns: 200 },
      );
    },
    PATIENCE,
  );
});

describe('a view', () => {
  it('finds devices by name with their place in the list and what they are made of', () => {
    const view = circuitView(CIRCUIT);
    expect(view.devices.get('-H1')).toMatchObject({ index: 2, device: { kind: 'lamp' } });
    expect(view.devices.get('-H1')?.anatomy.terminals).toEqual(['X1', 'X2']);
    expect(view.supplies.get('A')).toMatchObject({ volts: 24 });
    expect(view.wired.has('-K1:14')).toBe(true);
    expect(view.wired.has('-K1:12')).toBe(false);
  });

  it('has helpers for single devices', () => {
    expect(deviceOf(CIRCUIT, '-K1')?.kind).toBe('relay');
    expect(deviceOf(CIRCUIT, '-K2')).toBeUndefined();
    expect(terminalsOf(CIRCUIT.devices[0]!)).toEqual(['1', '2']);
  });
});

describe('terminals as text', () => {
  it('are taken apart and put together', () => {
    expect(parseTerminalRef('-K3:11')).toEqual({ device: '-K3', terminal: '11' });
    expect(parseTerminalRef('A:L+')).toEqual({ device: 'A', terminal: 'L+' });
    expect(terminalRefOf('A', 'L+')).toBe('A:L+');
    for (const text of ['', 'K3:11', '-K3', '-K3:', '-K3:11-12', 'AB:L', '-K3:11 ', '-k3:11', ':11']) {
      expect(parseTerminalRef(text)).toBeUndefined();
    }
  });

  it('in a row are told apart from a sign that belongs to one', () => {
    expect(parseTerminalList('11-12-14')).toEqual(['11', '12', '14']);
    expect(parseTerminalList('L+-L-')).toEqual(['L+', 'L-']);
    expect(parseTerminalList('L--N')).toEqual(['L-', 'N']);
    for (const text of ['', '-', '--', '1-2-3-4', '11--', '-11', 'a1']) {
      expect(parseTerminalList(text)).toBeUndefined();
    }
    expect(parseTerminalList('11-')).toEqual(['11-']);
  });

  it('are written as the notation does', () => {
    expect(stepText({ device: '-K3', enter: '11', leave: '12' })).toBe('-K3:11-12');
    expect(stepText({ device: 'A', enter: 'N' })).toBe('A:N');
  });
});

describe('places', () => {
  const text = 'supply A 24 V AC\n-K1 relay\n\nsheet 2 "x"\nA:L  -K1:A1-A2  A:N';
  const { circuit, places } = whole(readCircuitWithPlaces(text));

  it.each([
    [{ kind: 'circuit' } as const, '1:1'],
    [{ kind: 'supply', index: 0 } as const, '1:1'],
    [{ kind: 'device', index: 0 } as const, '2:1'],
    [{ kind: 'device', index: 0, terminal: 'A2' } as const, '5:6'],
    [{ kind: 'device', index: 0, terminal: '11' } as const, '2:1'],
    [{ kind: 'sheet', index: 0 } as const, '4:1'],
    [{ kind: 'path', path: 0 } as const, '5:1'],
    [{ kind: 'step', path: 0, step: 2 } as const, '5:17'],
  ])('of %j', (concern, place) => {
    const { line, column } = placeOf(circuit, places, concern);
    expect(`${line}:${column}`).toBe(place);
  });
});
