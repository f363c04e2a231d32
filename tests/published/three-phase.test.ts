/**
 * Three phases by their textbook relations. Star connection gives each winding 58 % (1 over the root of 3) of what delta
 * gives it, and draws a third of the line current (any textbook of electrical machines; seen in data sheets of star-delta
 * starters). With one line lost, two windings of a star share the line voltage that is left; of a delta, one winding keeps
 * it and the other two share it (derived from the circuit).
 */
import { describe, expect, it } from 'vitest';
import type { Supply } from '../../shared/circuit.ts';
import {
  lampStateAt,
  type Machine,
  machineOf,
  meter,
  planOf,
  readState,
  type State,
  voltsAcross,
} from '../../src/solver/index.ts';
import { wired } from '../support/hops.ts';
import { standAt } from '../support/standing.ts';

const mains: Supply = { name: 'A', volts: 400, current: '3AC', earthed: true };

/** A motor with six terminals, its line contactor, and contactors that join it in star or in delta. */
const starter = wired({
  supplies: [mains],
  devices: [
    { kind: 'fuse', name: '-F1', poles: 3 },
    ...['-Q1', '-Q2', '-Q3'].map((name) => ({
      kind: 'contactor' as const,
      name,
      mains: 3,
      contacts: [],
      rating: { volts: 24, current: 'DC' as const },
    })),
    { kind: 'motor', name: '-M1', terminals: 6, volts: 400 },
  ],
  paths: [
    'A:L1 -F1:1-2 -Q1:1-2 -M1:U1',
    'A:L2 -F1:3-4 -Q1:3-4 -M1:V1',
    'A:L3 -F1:5-6 -Q1:5-6 -M1:W1',
    // Star: the other ends joined.
    '-M1:U2 -Q2:1-2 -Q2:4 -Q2:6',
    '-M1:V2 -Q2:3',
    '-M1:W2 -Q2:5',
    // Delta: the end of each on the beginning of the next.
    '-M1:U1 -Q3:1-2 -M1:W2',
    '-M1:V1 -Q3:3-4 -M1:U2',
    '-M1:W1 -Q3:5-6 -M1:V2',
  ],
});

const machine = machineOf(planOf(starter));
const join = (how: '-Q2' | '-Q3'): State =>
  standAt(
    machine,
    new Map([
      ['-Q1', [1]],
      [how, [1]],
    ]),
  );

const winding = (on: Machine, id: string): number =>
  on.plan.loads.findIndex((load) => load.id === `-M1:${id}`);
const volts = (state: State, id: string): number => {
  const load = winding(machine, id);
  return voltsAcross(state, load);
};
/** Current in a winding, from its first end to its second. */
const current = (state: State, id: string): [number, number] => {
  const load = winding(machine, id);
  const g = machine.plan.loads[load]!.siemens;
  return [g * state.volts[0]![load]!, g * state.volts[1]![load]!];
};

describe('a motor on three phases', () => {
  it('has the line voltage across each winding in delta, and 58 % of it in star', () => {
    const star = join('-Q2');
    const delta = join('-Q3');
    for (const id of ['U1', 'V1', 'W1']) {
      expect(volts(delta, id)).toBeCloseTo(400, 6);
      expect(volts(star, id) / volts(delta, id)).toBeCloseTo(1 / Math.sqrt(3), 9);
    }
  });

  it('draws a third of the line current in star', () => {
    const inStar = Math.hypot(...current(join('-Q2'), 'U1'));
    const delta = join('-Q3');
    // In delta the line L1 feeds the beginning of U and the end of W.
    const [ur, ui] = current(delta, 'U1');
    const [wr, wi] = current(delta, 'W1');
    const inDelta = Math.hypot(ur - wr, ui - wi);
    expect(inStar / inDelta).toBeCloseTo(1 / 3, 9);
  });

  it('balances: the star point is at the neutral, and the voltages of the windings add up to nothing', () => {
    const star = join('-Q2');
    expect(meter(machine, star, '-M1:U2', 'A:N').volts).toBeCloseTo(0, 6);
    for (const along of star.volts)
      expect(['U1', 'V1', 'W1'].reduce((sum, id) => sum + along[winding(machine, id)]!, 0)).toBeCloseTo(0, 6);
  });

  it('reads 400 V between any two lines and 231 V from a line to the neutral', () => {
    const rest = standAt(machine, new Map());
    for (const [one, other] of [
      ['L1', 'L2'],
      ['L2', 'L3'],
      ['L3', 'L1'],
    ])
      expect(meter(machine, rest, `A:${one}`, `A:${other}`).volts).toBeCloseTo(400, 6);
    expect(meter(machine, rest, 'A:L2', 'A:N').volts).toBeCloseTo(400 / Math.sqrt(3), 6);
  });

  it('does not run with its star and delta contactors closed at once: the lines are joined', () => {
    const both = standAt(machine, new Map(['-Q1', '-Q2', '-Q3'].map((name) => [name, [1]])));
    expect(both.tripped.map((index) => machine.plan.mechanisms[index]!.id)).toEqual(['-F1']);
  });

  const withoutL3 = (how: '-Q2' | '-Q3'): { on: Machine; state: State } => {
    const on = machineOf(planOf(starter, [{ kind: 'loose', at: '-F1:6' }]));
    return {
      on,
      state: standAt(
        on,
        new Map([
          ['-Q1', [1]],
          [how, [1]],
        ]),
      ),
    };
  };

  it('with one line lost has half the line voltage on two windings of a star, and nothing on the third', () => {
    const { on, state } = withoutL3('-Q2');
    const at = (id: string): number => voltsAcross(state, winding(on, id));
    expect([at('U1'), at('V1'), at('W1')].map((value) => Math.round(value))).toEqual([200, 200, 0]);
    expect(readState(on, state).loads['-M1']).toBe('dark');
  });

  it('with one line lost has the whole line voltage on one winding of a delta, and half of it on two', () => {
    const { on, state } = withoutL3('-Q3');
    const at = (id: string): number => voltsAcross(state, winding(on, id));
    expect([at('U1'), at('V1'), at('W1')].map((value) => Math.round(value))).toEqual([400, 200, 200]);
    expect(lampStateAt(on, state, winding(on, 'U1'))).toBe('lit');
    expect(readState(on, state).loads['-M1']).toBe('dim');
  });
});
