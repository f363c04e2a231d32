/** Circuits that nobody draws: nothing hangs, nothing throws, and what isn't certain is said not to be. */
import { describe, expect, it } from 'vitest';
import { type Circuit, circuit as circuitSchema, type Device, type Supply } from '../../shared/circuit.ts';
import type { Act, Scenario } from '../../shared/scenario.ts';
import { solution as solutionSchema } from '../../shared/solution.ts';
import { randomOf } from '../../src/generator/random.ts';
import { machineOf, planOf, play, runTimed, type Solved, solve } from '../../src/solver/index.ts';
import { button, dc24, lamp, rated, relay, wired } from '../support/hops.ts';
import { buzzers, chain, entwined, mesh, races, sealed } from '../support/plants.ts';
import { randomFaults, tangle } from '../support/tangle.ts';
import { contactsOfDevice } from '../support/wiring.ts';

const press: Act = { kind: 'press', device: '-S1' };
const release: Act = { kind: 'release', device: '-S1' };
const live = (acts: readonly Act[], faults: Scenario['faults'] = []): Scenario => ({
  start: 'live',
  faults,
  acts: [...acts],
});

/** Solves, and holds the answer against its contract. */
function solved(circuit: Circuit, scenario: Scenario): Solved {
  const found = solve(circuit, scenario);
  expect(solutionSchema.safeParse(found.solution).success).toBe(true);
  return found;
}

describe('large circuits', () => {
  it.each([
    ['each on a path of its own', false],
    ['all behind one emergency stop', true],
  ])('settle a chain of 1,000 relays, %s', (_, stopped) => {
    const { solution, state } = solved(chain(1000, stopped), live([press]));
    expect(solution.outcome).toEqual({ kind: 'steady' });
    expect(solution.lamps['-P1']).toBe('lit');
    expect(state.at.filter((mask) => mask === 2)).toHaveLength(1001);
    expect(solution.steps.filter(({ what }) => what === 'arrives')).toHaveLength(1001);
    expect(solution.trace.every(({ fed }) => fed)).toBe(true);
  });

  it('try every order of 100 sealed contactors that one emergency stop puts out', () => {
    const starts = [1, 20, 63, 100].map((n): Act => ({ kind: 'press', device: `-S${n}` }));
    const { solution } = solved(sealed(100), live([...starts, { kind: 'press', device: '-S900' }]));
    expect(solution.outcome).toEqual({ kind: 'steady' });
    expect(Object.values(solution.lamps).every((lit) => lit === 'dark')).toBe(true);
  });

  it('solve 1,900 lamps that all hang on one another, and trace each', () => {
    const { solution } = solved(mesh(1900, 600), live([press]));
    expect(solution.outcome).toEqual({ kind: 'steady' });
    expect(solution.trace.filter(({ fed }) => fed).length).toBeGreaterThan(1000);
  });
});

describe('circuits that never rest', () => {
  it('are told from one relay that breaks its own coil', () => {
    const { solution } = solved(buzzers(1), live([press]));
    expect(solution.outcome).toEqual({ kind: 'keeps-switching', devices: ['-K1'] });
  });

  it('rest again when what drives them is let go', () => {
    const { solution } = solved(buzzers(1), live([press, release]));
    expect(solution.outcome).toEqual({ kind: 'steady' });
  });

  it('are not called steady although an act elsewhere changes nothing', () => {
    const circuit = wired({
      devices: [button('-S1'), button('-S2'), relay('-K1'), lamp('-P1')],
      paths: ['A:L+ -S1:13-14 -K1:11-12 -K1:A1-A2 A:L-', 'A:L+ -S2:13-14 -P1:X1-X2 A:L-'],
    });
    const elsewhere: Act = { kind: 'press', device: '-S2' };
    const machine = machineOf(planOf(circuit));
    expect(play(machine, live([press, elsewhere])).steady).toBe(false);
    expect(solved(circuit, live([press, elsewhere])).solution.outcome.kind).toBe('keeps-switching');
  });

  it('are told of 300 at once, each by itself', () => {
    const { solution } = solved(buzzers(300), live([press]));
    expect(solution.outcome.kind).toBe('keeps-switching');
    expect(solution.outcome.kind === 'keeps-switching' && solution.outcome.devices).toHaveLength(300);
    expect(solution.steps.length).toBeLessThan(40_000);
  });

  it('of 200 relays that lock out two others each are given up on, and that is said', () => {
    const circuit = entwined(200);
    expect(solved(circuit, live([press, release, press])).solution.outcome.kind).toBe('undecided');
  });
});

describe('races', () => {
  it('of three pairs have 27 endings: either of each pair, or neither for ever', () => {
    const { solution } = solved(races(3), live([press]));
    expect(solution.outcome).toMatchObject({ kind: 'race', ways: 27 });
  });

  it('of 64 pairs are too many, and that is said', () => {
    expect(solved(races(64), live([press])).solution.outcome.kind).toBe('undecided');
  });
});

describe('timers', () => {
  const flashers = (...spans: readonly (readonly [on: number, off: number])[]): Circuit =>
    wired({
      devices: spans.flatMap(([on, off], index): Device[] => [
        { kind: 'flasher', name: `-K${index + 1}`, on, off, poles: 1, rating: rated(24) },
        lamp(`-P${index + 1}`),
      ]),
      paths: spans.flatMap((_, index) => [
        `A:L+ -K${index + 1}:A1-A2 A:L-`,
        `A:L+ -K${index + 1}:15-18 -P${index + 1}:X1-X2 A:L-`,
      ]),
    });
  const day: Act = { kind: 'wait', seconds: 86_400 };

  it('flash 100 times a second for ten days of waiting', () => {
    const { solution, state } = solved(flashers([0.005, 0.005]), live(Array.from({ length: 10 }, () => day)));
    expect([solution.outcome.kind, state.now]).toEqual(['keeps-switching', 864_000]);
    expect(solution.lamps['-P1']).toBe('flashing');
  });

  it('land in the right span after a long wait: 0.3 s on and 0.7 s off, for 1,000,000.4 s', () => {
    const machine = machineOf(planOf(flashers([0.3, 0.7])));
    const at = (seconds: number): number => {
      const waits = Array.from({ length: 20 }, (): Act => ({ kind: 'wait', seconds: 50_000 }));
      return play(machine, live([...waits, { kind: 'wait', seconds }])).state.at[0]!;
    };
    expect([at(0.1), at(0.4), at(0.95), at(1.1)]).toEqual([2, 1, 1, 2]);
  });

  it('of two periods that never meet are given up on, and that is said', () => {
    const circuit = flashers([0.01, 0.011], [0.0101234, 0.0071]);
    const { solution } = solved(circuit, live([day]));
    expect(solution.outcome.kind).toBe('undecided');
    expect(solution.lamps).toEqual({ '-P1': 'flashing', '-P2': 'flashing' });
    expect(play(machineOf(planOf(circuit)), live([day])).steady).toBe(false);
  });

  it('show a lamp on a slow flasher flashing beside a quick one', () => {
    const { solution } = solved(flashers([0.01, 0.01], [1800, 1800]), live([]));
    expect(solution.lamps).toEqual({ '-P1': 'flashing', '-P2': 'flashing' });
  });

  it('tell moments in order, in a run that is cut short too', () => {
    const { happenings, rested } = runTimed(
      machineOf(planOf(flashers([0.02, 0.02]))),
      live([day, day, press]),
    );
    expect(rested).toBe(false);
    for (let index = 1; index < happenings.length; index++)
      expect(happenings[index]!.ms).toBeGreaterThanOrEqual(happenings[index - 1]!.ms);
  });
});

describe('tangles', () => {
  const kinds = ['AC', 'DC', '3AC'] as const;
  const eight = (random: ReturnType<typeof randomOf>): Supply[] =>
    [...'ABCDEFGH'].map((name) => ({
      name,
      volts: random.pick([12, 24, 110, 400]),
      current: random.pick(kinds),
      earthed: random.chance(0.4),
    }));

  it('of eight supplies, faults and every kind of device are answered, 100 of them', () => {
    for (let index = 0; index < 100; index++) {
      const random = randomOf(`tangle ${index}`);
      const circuit = tangle(random, {
        supplies: eight(random),
        relays: random.int(4, 14),
        loads: random.int(3, 12),
        junctions: random.int(4, 20),
        feeds: random.int(0, 6),
      });
      const acts = circuit.devices.flatMap(({ kind, name }): Act[] =>
        kind === 'push-button'
          ? [{ kind: 'press', device: name }]
          : kind === 'selector'
            ? [{ kind: 'turn', device: name, to: 'Auto' }]
            : kind === 'fuse' || kind === 'breaker' || kind === 'isolator'
              ? [
                  { kind: 'open', device: name },
                  { kind: 'close', device: name },
                ]
              : [],
      );
      solved(
        circuit,
        live(
          [...acts, { kind: 'wait', seconds: 30 }, { kind: 'fail', supply: 'A' }],
          randomFaults(random, circuit, 4),
        ),
      );
    }
  });

  it('with every contact welded are answered, 60 of them', () => {
    for (let index = 0; index < 60; index++) {
      const random = randomOf(`welded ${index}`);
      const circuit = tangle(random, { relays: 5, feeds: 3 });
      const faults = circuit.devices.flatMap(contactsOfDevice).map(({ from, to }) => ({
        kind: 'welded' as const,
        from: from as `${string}:${string}`,
        to: to as `${string}:${string}`,
      }));
      solved(
        circuit,
        live(
          [
            { kind: 'fail', supply: 'A' },
            { kind: 'restore', supply: 'A' },
          ],
          faults,
        ),
      );
    }
  });
});

describe('selectors', () => {
  it('of six positions close what is closed in each, and nothing on the way that is not closed in both', () => {
    const positions = ['P1', 'P2', 'P3', 'P4', 'P5', 'P6'];
    const circuit = wired({
      devices: [
        {
          kind: 'selector',
          name: '-S1',
          positions,
          contacts: [
            ...positions.map((position, index) => ({
              form: 'make' as const,
              terminals: [`${index + 1}3`, `${index + 1}4`],
              positions: [position],
            })),
            { form: 'make', terminals: ['73', '74'], positions: ['P2', 'P3'] },
            { form: 'break', terminals: ['81', '82'], positions: ['P5', 'P6'] },
          ],
        },
        ...positions.map((_, index) => lamp(`-P${index + 1}`)),
        lamp('-P7'),
        lamp('-P8'),
      ],
      paths: [
        ...positions.map((_, index) => `A:L+ -S1:${index + 1}3-${index + 1}4 -P${index + 1}:X1-X2 A:L-`),
        'A:L+ -S1:73-74 -P7:X1-X2 A:L-',
        'A:L+ -S1:81-82 -P8:X1-X2 A:L-',
      ],
    });
    positions.forEach((to, index) => {
      const { solution } = solved(circuit, live([{ kind: 'turn', device: '-S1', to }]));
      const lit = Object.keys(solution.lamps).filter((id) => solution.lamps[id] === 'lit');
      expect(lit).toEqual(
        [
          `-P${index + 1}`,
          ...(index === 1 || index === 2 ? ['-P7'] : []),
          ...(index < 4 ? ['-P8'] : []),
        ].sort(),
      );
    });
    const watched: (readonly number[])[] = [];
    runTimed(
      machineOf(planOf(circuit)),
      live([
        { kind: 'turn', device: '-S1', to: 'P2' },
        { kind: 'turn', device: '-S1', to: 'P3' },
      ]),
      undefined,
      (state) => watched.push([...state.volts[0]!].map((volts) => Math.round(volts))),
    );
    const seventh = watched.map((volts) => volts[6]);
    // Closed in P2 and P3, it stays closed from the one to the other; from P1 it closes when P2 is reached.
    expect(seventh.slice(seventh.indexOf(24))).not.toContain(0);
  });
});

describe('all limits of the contract at once', () => {
  it('are answered or said to be too much: 2,000 devices, 4,000 paths, 8 supplies, 20 faults, 200 acts', () => {
    const supplies: Supply[] = [...'ABCDEFGH'].map((name, index) => ({ ...dc24, name, earthed: index < 2 }));
    const random = randomOf('all limits');
    const base = mesh(1000, 600, supplies);
    const relays = Array.from({ length: 900 }, (_, index) => relay(`-K${index + 1}`, 4));
    const timers = Array.from(
      { length: 80 },
      (_, index): Device => ({
        kind: 'flasher',
        name: `-K${2000 + index}`,
        on: 0.01 + index / 7919,
        off: 0.01,
        poles: 2,
        rating: rated(24),
      }),
    );
    const any = (): string => `-X${random.int(1, 10)}:${random.int(1, 60)}`;
    const more = wired({
      devices: [],
      paths: [
        ...relays.flatMap(({ name }) => [
          `${any()} ${name}:A1-A2 ${random.pick(supplies).name}:L-`,
          `${any()} ${name}:11-14 ${any()}`,
          `${any()} ${name}:21-24 ${any()}`,
        ]),
        ...timers.map(({ name }) => `${any()} ${name}:A1-A2 A:L-`),
        ...timers.map(({ name }) => `${any()} ${name}:15-18 ${any()}`),
      ],
    });
    const circuit: Circuit = {
      ...base,
      devices: [...base.devices, ...relays, ...timers],
      paths: [...base.paths, ...more.paths],
    };
    expect(circuitSchema.safeParse(circuit).success).toBe(true);
    const acts = Array.from(
      { length: 200 },
      (_, index): Act =>
        index % 4 === 0
          ? press
          : index % 4 === 1
            ? { kind: 'wait', seconds: 86_400 }
            : index % 4 === 2
              ? release
              : { kind: 'hold', device: `-K${index}` },
    );
    const { solution } = solved(circuit, live(acts, randomFaults(random, circuit, 20)));
    expect(solution.outcome.kind).toBe('undecided');
  });
});
