/**
 * What is reasoned out of rings against trying every order: small ones are compared state by state, and the ones that are too
 * large for that must come to what the small ones come to.
 */
import { describe, expect, it } from 'vitest';
import type { Circuit, Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { type Random, randomOf } from '../../src/generator/random.ts';
import type { Ending } from '../../src/solver/endings.ts';
import { begun, byOrders, EXPLORE_LIMITS } from '../../src/solver/explore.ts';
import { applyAct, machineOf, planOf, solve } from '../../src/solver/index.ts';
import { byReasoning } from '../../src/solver/reasoning.ts';
import { settleAll } from '../../src/solver/settle.ts';
import { type State, startState } from '../../src/solver/state.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { button, lamp, latching, rated, relay, wired } from '../support/hops.ts';

const press: Act = { kind: 'press', device: '-S1' };
const release: Act = { kind: 'release', device: '-S1' };

/** Each relay behind a contact of the one before it: a break where `opposite`, and one button in front of all. */
const ringOf = (opposite: readonly boolean[]): Circuit =>
  wired({
    devices: [button('-S1'), ...opposite.map((_, index) => relay(`-K${index + 1}`)), lamp('-P1')],
    paths: [
      ...opposite.map((other, index) => {
        const before = index === 0 ? opposite.length : index;
        const feed = index === 0 ? 'A:L+ -S1:13-14' : '-S1:14';
        return `${feed} -K${before}:11-1${other ? 2 : 4} -K${index + 1}:A1-A2 A:L-`;
      }),
      'A:L+ -K1:21-24 -P1:X1-X2 A:L-',
    ],
  });

const outcomeOf = (circuit: Circuit, acts: readonly Act[]) =>
  solve(circuit, { start: 'live', faults: [], acts: [...acts] }).solution.outcome;

describe('rings of relays', () => {
  const breaks = (size: number): boolean[] => Array.from({ length: size }, () => true);

  it('of break contacts never rest when they are odd, and are a race between three ways when they are even', () => {
    for (const size of [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 25, 40, 151]) {
      const outcome = outcomeOf(ringOf(breaks(size)), [press]);
      const devices = breaks(size).map((_, index) => `-K${index + 1}`);
      if (size % 2 === 1) expect(outcome).toEqual({ kind: 'keeps-switching', devices });
      else expect(outcome).toEqual({ kind: 'race', devices, ways: 3 });
    }
  });

  it('rest again when what feeds them is let go, whatever they were doing', () => {
    for (const size of [3, 8, 9, 31])
      expect(outcomeOf(ringOf(breaks(size)), [press, release])).toEqual({ kind: 'steady' });
  });

  it('show a lamp on one of them flashing', () => {
    const { solution } = solve(ringOf(breaks(11)), { start: 'live', faults: [], acts: [press] });
    expect(solution.lamps).toEqual({ '-P1': 'flashing' });
  });

  it('of make contacts alone stay at rest, large or small', () => {
    for (const size of [2, 5, 30])
      expect(outcomeOf(ringOf(Array.from({ length: size }, () => false)), [press])).toEqual({
        kind: 'steady',
      });
  });
});

/** Relays behind one or two contacts each, of each other and of two buttons; a latching relay or a timer now and then. */
function network(random: Random): Circuit {
  const size = random.int(2, 5);
  const names = Array.from({ length: size }, (_, index) => `-K${index + 1}`);
  const poles = new Map<string, string[]>(
    [...names, '-S1', '-S2'].map((name) => [name, ['1', '2', '3', '4']] as const),
  );
  const many = (name: string): Device => ({
    kind: 'push-button',
    name,
    contacts: ['1', '2', '3', '4'].map((pole) => ({
      form: 'changeover' as const,
      terminals: [`${pole}1`, `${pole}2`, `${pole}4`],
    })),
  });
  const relays = names.map((name): Device => {
    if (random.chance(0.08)) return latching(name);
    if (random.chance(0.08)) return { kind: 'on-delay', name, seconds: 5, poles: 2, rating: rated(24) };
    return relay(name);
  });
  for (const { name, kind } of relays) if (kind === 'on-delay') poles.set(name, []);
  const hop = (): string => {
    const name = random.pick(
      [...names, ...names, '-S1', '-S2'].filter((each) => poles.get(each)!.length > 0),
    );
    const pole = poles.get(name)!.pop()!;
    return `${name}:${pole}1-${pole}${random.pick(['2', '4'])}`;
  };
  return wired({
    devices: [many('-S1'), many('-S2'), ...relays, lamp('-P1')],
    paths: names.map((name) =>
      ['A:L+', ...(random.chance(0.4) ? [hop(), hop()] : [hop()]), `${name}:A1-A2`, 'A:L-'].join(' '),
    ),
  });
}

const positions = ({ at }: State): string => at.join('');
const goingOn = (endings: readonly Ending[]) => endings.filter(({ states }) => states.length > 1);
const resting = (endings: readonly Ending[]): string[] => {
  const rests = endings.filter(({ states }) => states.length === 1);
  return [...new Set(rests.map(({ states }) => positions(states[0]!)))].sort();
};

describe('what is reasoned', () => {
  it('is what trying every order finds, in 3,000 random networks after one act', () => {
    let [decided, forEver, races] = [0, 0, 0];
    for (let index = 0; index < drawn(3000); index++) {
      const seed = `reasoned ${index}`;
      const machine = machineOf(planOf(network(randomOf(seed))));
      const from = startState(machine, 'live');
      if (index % 2 === 1 && settleAll(machine, from) < 0) continue;
      const acted = index % 2 === 1;
      const start = begun(machine, from, acted ? applyAct(machine, from, press).mechanisms : 'all');
      const reasoned = byReasoning(machine, [start], EXPLORE_LIMITS);
      if (!reasoned) continue;
      decided++;
      const tried = byOrders(machine, [start], EXPLORE_LIMITS)!;
      expect(resting(reasoned), seed).toEqual(resting(tried));
      const reached = new Set(goingOn(tried).flatMap(({ states }) => states.map(positions)));
      const going = goingOn(reasoned);
      expect(going.length > 0, seed).toBe(reached.size > 0);
      for (const { states } of going)
        for (const state of states) expect([...reached], seed).toContain(positions(state));
      if (going.length > 0) forEver++;
      if (resting(reasoned).length > 1) races++;
    }
    expect(decided).toBeGreaterThan(atLeast(1000));
    expect(forEver).toBeGreaterThan(atLeast(100));
    expect(races).toBeGreaterThan(atLeast(20));
  });
});
