/** The trace of every load: fed paths are closed from pole to pole, blockers are a smallest set, found by trying all sets. */
import { describe, expect, it } from 'vitest';
import type { Circuit, Supply } from '../../shared/circuit.ts';
import type { LoadTrace } from '../../shared/solution.ts';
import { randomOf } from '../../src/generator/random.ts';
import {
  type Machine,
  machineOf,
  planOf,
  type State,
  traceAll,
  traceLoad,
  voltsAcross,
} from '../../src/solver/index.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { button, dc24, lamp, relay, wired } from '../support/hops.ts';
import { nodeVolts } from '../support/naive-network.ts';
import { standAt } from '../support/standing.ts';
import { isShorted, randomStanding, tangle } from '../support/tangle.ts';
import {
  contactsOfDevice,
  netsOf,
  type Resistor,
  type Standing,
  type Wiring,
  wiringOf,
} from '../support/wiring.ts';

type Pair = readonly [string, string];

interface Case {
  readonly seed: string;
  readonly circuit: Circuit;
  readonly machine: Machine;
  readonly state: State;
  readonly wiring: Wiring;
  readonly open: readonly Pair[];
}

function cases(label: string, wanted: number, supplies: readonly Supply[]): Case[] {
  const found: Case[] = [];
  for (let index = 0; found.length < wanted; index++) {
    const seed = `${label} ${index}`;
    const random = randomOf(seed);
    const circuit = tangle(random, {
      supplies,
      volts: [24],
      relays: random.int(1, 4),
      loads: random.int(1, 4),
      junctions: random.int(2, 6),
    });
    const standing: Standing = randomStanding(random, circuit);
    const wiring = wiringOf(circuit, [], standing);
    if (isShorted(wiring)) continue;
    const open = circuit.devices
      .flatMap(contactsOfDevice)
      .filter(
        ({ mechanism, closedIn }) => !(standing.get(mechanism) ?? [0]).every((at) => closedIn.includes(at)),
      )
      .map(({ from, to }): Pair => [from, to]);
    const machine = machineOf(planOf(circuit));
    found.push({ seed, circuit, machine, state: standAt(machine, standing), wiring, open });
  }
  return found;
}

const loadOf = ({ machine, wiring }: Case, id: string): Resistor => {
  const { device, from, to } = machine.plan.loads.find((load) => load.id === id)!;
  return wiring.resistors.find((part) => part.from === `${device}:${from}` && part.to === `${device}:${to}`)!;
};

/** Poles by potential, of the one supply. */
const polesOf = (supply: Supply): string[] =>
  (supply.current === 'DC'
    ? ['L+', 'L-']
    : supply.current === 'AC'
      ? ['L', 'N']
      : ['L1', 'L2', 'L3', 'N']
  ).map((pole) => `${supply.name}:${pole}`);

/**
 * Whether current could come to a load if any of those contacts closed: they and the loads are given resistances at random, so
 * that nothing balances, and the network is solved. Ideal contacts could bridge the load or short-circuit the supply.
 */
function couldFlow({ seed, wiring }: Case, load: Resistor, closable: readonly Pair[]): boolean {
  const random = randomOf(`${seed} resistances`);
  const ohms = (): number => 50 + random.int(0, 1000) / 7;
  const resistors = [
    ...wiring.resistors.map((part) => ({ ...part, ohms: ohms() })),
    ...closable.map(([from, to]) => ({ name: `${from}-${to}`, from, to, ohms: ohms() })),
  ];
  return (['direct', 're', 'im'] as const).some((part) => {
    const volts = nodeVolts({ ...wiring, resistors }, part);
    return Math.abs(volts.get(load.from)! - volts.get(load.to)!) > 1e-3;
  });
}

/** Why a fed path is wrong, or undefined. */
function wrongPath({ circuit, machine, state, wiring }: Case, { load, path }: LoadTrace): string | undefined {
  const closedNet = netsOf(wiring);
  const bare = netsOf({
    ...wiring,
    joined: wiring.joined.filter(([a, b]) => a.endsWith('~') || b.endsWith('~')),
  });
  const first = path[0]!;
  const last = path.at(-1)!;
  if (first.leave || last.leave || first.device !== last.device || first.enter === last.enter)
    return 'does not go from one pole to another';
  if (!circuit.supplies.some(({ name }) => name === first.device)) return 'does not begin at a supply';
  const supply = circuit.supplies.find(({ name }) => name === first.device)!;
  const own = polesOf(supply).map(bare);
  const direct = circuit.supplies.every(({ current }) => current === 'DC');
  let passed = false;
  for (let index = 1; index < path.length; index++) {
    const before = path[index - 1]!;
    const here = path[index]!;
    const from = `${before.device}:${before.leave ?? before.enter}`;
    const to = `${here.device}:${here.enter}`;
    const earthed = [before, here].every(({ device }) =>
      circuit.supplies.some((supply) => supply.name === device && supply.earthed),
    );
    if (bare(from) !== bare(to) && !earthed) return `${from} and ${to} are not joined by a conductor`;
    if (index > 1 && index < path.length - 1 && own.includes(bare(to))) return `goes past a pole at ${to}`;
    if (here.leave === undefined || circuit.supplies.some(({ name }) => name === here.device)) continue;
    const part = machine.plan.loads.findIndex(
      ({ device, from: a, to: b }) =>
        device === here.device && [a, b].includes(here.enter) && [a, b].includes(here.leave!),
    );
    if (part >= 0) {
      passed ||= machine.plan.loads[part]!.id === load;
      if (voltsAcross(state, part) < 1e-6) return `${here.device} on the way has no voltage`;
      const sign = machine.plan.loads[part]!.from === here.enter ? 1 : -1;
      if (direct && sign * state.volts[0]![part]! < 0) return `runs against the current in ${here.device}`;
    } else if (closedNet(to) !== closedNet(`${here.device}:${here.leave}`)) return `${to} is open`;
  }
  return passed ? undefined : 'does not pass the load';
}

/** Sets of `size` members. */
function* subsets<T>(items: readonly T[], size: number, from = 0): Generator<readonly T[]> {
  if (size === 0) yield [];
  else
    for (let index = from; index < items.length; index++)
      for (const rest of subsets(items, size - 1, index + 1)) yield [items[index]!, ...rest];
}

const same = ([a, b]: Pair, [c, d]: Pair): boolean => (a === c && b === d) || (a === d && b === c);

function wrongBlockers(one: Case, { load: id, stoppedBy }: LoadTrace, smallest: boolean): string | undefined {
  const load = loadOf(one, id);
  const blockers = stoppedBy.map(
    ({ device, enter, leave }): Pair => [`${device}:${enter}`, `${device}:${leave}`],
  );
  const isIn = (set: readonly Pair[], pair: Pair): boolean => set.some((other) => same(pair, other));
  const closed = blockers.find((pair) => !isIn(one.open, pair));
  if (closed) return `${closed.join(' to ')} is not open`;
  // Bridged by closed contacts: nothing that opens or closes matters to it.
  if (netsOf(one.wiring)(load.from) === netsOf(one.wiring)(load.to)) return undefined;
  const without = (set: readonly Pair[]): Pair[] => one.open.filter((pair) => !isIn(set, pair));
  if (couldFlow(one, load, without(blockers))) {
    // A load with closed ways to both poles has no voltage only in a balanced bridge, or bridged itself.
    return couldFlow(one, load, []) && blockers.length === 0
      ? undefined
      : 'current could flow past the blockers';
  }
  if (!smallest) return undefined;
  for (let size = 0; size < blockers.length; size++)
    for (const set of subsets(one.open, size))
      if (!couldFlow(one, load, without(set)))
        return `${size} would do: ${set.map((pair) => pair.join('-'))}`;
  return undefined;
}

function check(found: readonly Case[], smallest: boolean) {
  const wrong: string[] = [];
  let fed = 0;
  const sizes = new Map<number, number>();
  for (const one of found) {
    for (const trace of traceAll(one.machine, one.state)) {
      const index = one.machine.plan.loads.findIndex(({ id }) => id === trace.load);
      const across = voltsAcross(one.state, index);
      const reason =
        trace.fed !== across > 24e-6
          ? `fed is ${trace.fed} at ${across} V`
          : trace.fed
            ? wrongPath(one, trace)
            : wrongBlockers(one, trace, smallest);
      if (reason) wrong.push(`${one.seed}, ${trace.load}: ${reason}`);
      if (trace.fed) fed++;
      else sizes.set(trace.stoppedBy.length, (sizes.get(trace.stoppedBy.length) ?? 0) + 1);
    }
  }
  return { wrong, fed, sizes };
}

describe('the trace of a load', () => {
  it('is a closed path from pole to pole, or a smallest set of open contacts, in 1,500 random circuits', () => {
    const { wrong, fed, sizes } = check(cases('one supply', drawn(1500), [dc24]), true);
    expect(wrong.slice(0, 10)).toEqual([]);
    expect(fed).toBeGreaterThan(atLeast(500));
    for (const size of [1, 2]) expect(sizes.get(size) ?? 0).toBeGreaterThan(atLeast(50));
    expect(sizes.get(3) ?? 0).toBeGreaterThan(atLeast(5));
  });

  it('names contacts that do stop the current on three phases, in 300 random circuits', () => {
    const supplies: Supply[] = [{ name: 'A', volts: 42, current: '3AC', earthed: true }];
    const { wrong } = check(cases('phases', drawn(300), supplies), true);
    expect(wrong.slice(0, 10)).toEqual([]);
  });

  it('names contacts that do stop the current with two isolated supplies, in 300 random circuits', () => {
    const { wrong } = check(
      cases('two supplies', drawn(300), [dc24, { ...dc24, name: 'B', earthed: true }]),
      false,
    );
    expect(wrong.slice(0, 10)).toEqual([]);
  });

  it('leads through earth, or through the other supply, where that is how the current goes, in 300 random circuits', () => {
    const { wrong } = check(
      cases('earthed', drawn(150), [
        { ...dc24, earthed: true },
        { ...dc24, name: 'B', volts: 48, earthed: true },
      ]),
      false,
    );
    expect(wrong.slice(0, 10)).toEqual([]);
    const more = check(cases('unlike', drawn(150), [dc24, { ...dc24, name: 'B', volts: 48 }]), false);
    expect(more.wrong.slice(0, 10)).toEqual([]);
  });

  it('stops the current for certain: with the blockers open and any others closed, 300 loads have no voltage', () => {
    let looked = 0;
    for (const one of cases('physical', drawn(1400), [dc24])) {
      const random = randomOf(one.seed);
      for (const { load: id, fed, stoppedBy } of traceAll(one.machine, one.state)) {
        if (fed || stoppedBy.length === 0) continue;
        const blockers = stoppedBy.map(
          ({ device, enter, leave }): Pair => [`${device}:${enter}`, `${device}:${leave}`],
        );
        const others = one.open.filter(
          (pair) => !blockers.some((other) => same(pair, other)) && random.chance(0.5),
        );
        const wiring = { ...one.wiring, joined: [...one.wiring.joined, ...others] };
        if (isShorted(wiring)) continue;
        const volts = nodeVolts(wiring);
        const { from, to } = loadOf(one, id);
        expect(Math.abs(volts.get(from)! - volts.get(to)!)).toBeLessThan(1e-3);
        looked++;
      }
    }
    expect(looked).toBeGreaterThan(atLeast(300));
  });

  const series = wired({
    devices: [relay('-K1'), lamp('-P1'), lamp('-P2')],
    paths: ['A:L+ -K1:11-14 -P1:X1-X2 -P2:X1-X2 A:L-'],
  });

  it('of lamps in series names the open contact for both, and leads through the one to the other when it is closed', () => {
    const machine = machineOf(planOf(series));
    const rest = standAt(machine, new Map());
    for (const id of ['-P1', '-P2'])
      expect(traceLoad(machine, rest, id)?.stoppedBy).toEqual([
        { device: '-K1', enter: '11', leave: '14', because: 'rest' },
      ]);
    const operated = standAt(machine, new Map([['-K1', [1]]]));
    expect(traceLoad(machine, operated, '-P2')?.path.map(({ device }) => device)).toEqual([
      'A',
      '-K1',
      '-P1',
      '-P2',
      'A',
    ]);
  });

  it('goes through a dirty contact to the open one behind it', () => {
    const circuit = wired({
      devices: [relay('-K1'), relay('-K2'), lamp('-P1')],
      paths: ['A:L+ -K1:11-12 -K2:11-14 -P1:X1-X2 A:L-'],
    });
    const machine = machineOf(planOf(circuit, [{ kind: 'dirty', from: '-K1:11', to: '-K1:12', ohms: 500 }]));
    expect(traceLoad(machine, standAt(machine, new Map()), '-P1')?.stoppedBy).toEqual([
      { device: '-K2', enter: '11', leave: '14', because: 'rest' },
    ]);
  });

  it('of a motor in star names the main contacts that are open, though it has no return to the neutral', () => {
    const circuit = wired({
      supplies: [{ name: 'A', volts: 400, current: '3AC', earthed: true }],
      devices: [
        { kind: 'contactor', name: '-Q1', mains: 3, contacts: [], rating: { volts: 24, current: 'DC' } },
        { kind: 'motor', name: '-M1', terminals: 3, volts: 230 },
      ],
      paths: ['A:L1 -Q1:1-2 -M1:U1', 'A:L2 -Q1:3-4 -M1:V1', 'A:L3 -Q1:5-6 -M1:W1'],
    });
    const machine = machineOf(planOf(circuit));
    const { stoppedBy } = traceLoad(machine, standAt(machine, new Map()), '-M1:U1')!;
    expect(stoppedBy).toEqual([{ device: '-Q1', enter: '1', leave: '2', because: 'rest' }]);
  });

  it('says that the supply has failed where nothing else is open', () => {
    const circuit = wired({ devices: [lamp('-P1')], paths: ['A:L+ -P1:X1-X2 A:L-'] });
    const machine = machineOf(planOf(circuit));
    const state = standAt(machine, new Map());
    state.supplyOn[0] = 0;
    for (const along of state.volts) along.fill(0);
    expect(traceLoad(machine, state, '-P1')?.stoppedBy).toEqual([
      { device: 'A', enter: 'L+', leave: 'L-', because: 'fault' },
    ]);
  });

  it('names the one contact that closes a circuit of a supply which hangs on another by a lamp', () => {
    const circuit = wired({
      supplies: [dc24, { ...dc24, name: 'B', earthed: true }],
      devices: [button('-S1'), lamp('-P1'), lamp('-P2'), { kind: 'terminals', name: '-X1', count: 1 }],
      paths: ['A:L+ -P1:X1-X2 -X1:1', '-X1:1 -P2:X1-X2 B:L-', 'A:L- -S1:13-14 -X1:1'],
    });
    const machine = machineOf(planOf(circuit));
    const rest = standAt(machine, new Map());
    expect(traceLoad(machine, rest, '-P1')?.stoppedBy).toEqual([
      { device: '-S1', enter: '13', leave: '14', because: 'rest' },
    ]);
    // No act brings current to the second lamp: it is no part of any circuit of a supply.
    expect(traceLoad(machine, rest, '-P2')?.stoppedBy).toEqual([]);
  });
});
