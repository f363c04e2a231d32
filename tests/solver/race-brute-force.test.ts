/**
 * Every order of operation, against brute force: tests/support/every-order.ts knows no islands, no groups and no
 * shortcuts, and solves the network afresh for each state. The two must find the same endings.
 */
import { describe, expect, it } from 'vitest';
import type { Circuit, Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { type Random, randomOf } from '../../src/generator/random.ts';
import {
  everyBeginning,
  everyOutcome,
  type Machine,
  machineOf,
  planOf,
  type Standing,
} from '../../src/solver/index.ts';
import { type ContactTree, manyPoled, randomTree, relayPoles, Wirer } from '../support/contact-network.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { EveryOrder, type FlatEnding, TooMany } from '../support/every-order.ts';
import { lamp, latching, rated, relay, wired } from '../support/hops.ts';
import { tangle } from '../support/tangle.ts';

const fusesOf = (count: number): Device[] =>
  Array.from({ length: count }, (_, index) => ({ kind: 'fuse', name: `-F${index + 1}`, poles: 1 }));

/** Each fuse from the pole to a busbar of its own. */
const fusePaths = (count: number): string[] =>
  Array.from({ length: count }, (_, index) => `A:L+ -F${index + 1}:1-2 -X90:${index + 1}`);

/** Buttons and relays of all kinds, each coil behind a random network of contacts of them all. */
function feedbackCircuit(random: Random): Circuit {
  const wirer = new Wirer(random);
  const buttons = Array.from({ length: random.int(1, 3) }, (_, index) => manyPoled(`-S${index + 1}`, 4));
  for (const { name } of buttons) wirer.stock(name, relayPoles(4));
  const relays = Array.from({ length: random.int(2, 4) }, (_, index): Device => {
    const name = `-K${index + 1}`;
    const timer = { name, poles: 2, rating: rated(24) };
    wirer.stock(name, relayPoles(4));
    switch (random.int(0, 9)) {
      case 0:
      case 1:
        return latching(name);
      case 2:
        return { kind: random.pick(['on-delay', 'off-delay'] as const), seconds: 5, ...timer };
      case 3:
        return { kind: 'flasher', on: 1, off: 1, ...timer };
      case 4:
        return {
          kind: 'contactor',
          name,
          mains: 0,
          contacts: relayPoles(4).map((terminals) => ({ form: 'changeover' as const, terminals })),
          rating: rated(24),
        };
      default:
        return relay(name);
    }
  });
  // Timers have 15-16-18 where relays have 11-12-14, and only two of them.
  const timers = new Set(relays.filter(({ kind }) => /delay|flasher/.test(kind)).map(({ name }) => name));
  const fuses = random.chance(0.35) ? random.int(1, 2) : 0;
  const feed = (): string => (fuses === 0 ? 'A:L+' : `-X90:${random.int(1, fuses)}`);
  const net = (from: string, to: string): void => {
    const free = wirer.free();
    if (free.length === 0) return;
    const tree: ContactTree = randomTree(random, free, random.int(1, 3));
    try {
      wirer.wire(tree, from, to);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  };
  const lamps: Device[] = [];
  const extra = fusePaths(fuses);
  const back = (coil: string): void => {
    if (!random.chance(0.25)) {
      extra.push(`${coil} A:L-`);
      return;
    }
    // A lamp in series, perhaps bridged: the coil lands between its limits, or below.
    const name = `-P${lamps.length + 1}`;
    lamps.push(lamp(name, rated(24), random.pick([1, 2, 8])));
    extra.push(`${coil} ${name}:X1-X2 A:L-`);
    if (random.chance(0.7)) net(coil, 'A:L-');
  };
  for (const { name, kind } of relays) {
    net(feed(), `${name}:A1`);
    back(`${name}:A2`);
    if (kind !== 'latching-relay') continue;
    net(feed(), `${name}:B1`);
    back(`${name}:B2`);
  }
  if (random.chance(0.25)) net(feed(), 'A:L-');
  const spelled = (path: string): string =>
    path.replace(/(-K\d+):([12])([124])-([12])([124])/g, (whole, name, p, q, r, s) => {
      const digits: Record<string, string> = { 1: '5', 2: '6', 4: '8' };
      return timers.has(name) ? `${name}:${p}${digits[q]}-${r}${digits[s]}` : whole;
    });
  const paths = [...wirer.paths, ...extra];
  // A timer hasn't got poles 3 and 4.
  const there = paths.filter(
    (path) => ![...timers].some((name) => new RegExp(`${name}:[34]\\d-`).test(path)),
  );
  return wired({
    devices: [
      ...fusesOf(fuses),
      ...buttons,
      ...relays,
      ...lamps,
      ...wirer.boards(),
      { kind: 'terminals', name: '-X90', count: 2 },
    ],
    paths: there.map(spelled),
  });
}

/** An ending in words: every mechanism's positions at rest, and whether it moves on. */
type Told = string;

const tellFlat = (order: EveryOrder, ending: FlatEnding): Told =>
  JSON.stringify(
    order.movers.map(({ id }, mover) => [
      id,
      [
        ...new Set(ending.flatMap(({ parts }) => (parts[mover]!.at.length === 1 ? parts[mover]!.at : []))),
      ].sort(),
      ending.length === 1 && ending[0]!.parts[mover]!.timing,
    ]),
  ) + (ending.length > 1 ? ' for ever' : ` blown ${ending[0]!.blown} lost ${ending[0]!.lost}`);

function tellOurs(machine: Machine, order: EveryOrder, { states }: Standing['endings'][number]): Told {
  const blown = machine.plan.mechanisms.flatMap(({ id, protects }, index) =>
    protects && states[0]!.at[index] === 2 ? [id] : [],
  );
  return (
    JSON.stringify(
      order.movers.map(({ id }) => {
        const mechanism = machine.mechanismOf.get(id)!;
        const rests = states.map(({ at }) => at[mechanism]!).filter((at) => (at & (at - 1)) === 0);
        return [
          id,
          [...new Set(rests)].map((at) => 31 - Math.clz32(at)).sort(),
          states.length === 1 && states[0]!.due[mechanism] !== Infinity,
        ];
      }),
    ) + (states.length > 1 ? ' for ever' : ` blown ${blown} lost ${states[0]!.supplyOn[0] === 0}`)
  );
}

interface Comparison {
  compared: number;
  tooMany: number;
  races: number;
  forEver: number;
  tripped: number;
  readonly wrong: string[];
}

function compare(label: string, wanted: number, make: (random: Random) => Circuit, most = 400): Comparison {
  const result: Comparison = { compared: 0, tooMany: 0, races: 0, forEver: 0, tripped: 0, wrong: [] };
  for (let index = 0; result.compared < wanted; index++) {
    const seed = `${label} ${index}`;
    const random = randomOf(seed);
    const circuit = make(random);
    const buttons = circuit.devices.filter(({ kind }) => kind === 'push-button');
    const machine = machineOf(planOf(circuit));
    const order = new EveryOrder(circuit, most);
    const done: string[] = ['start'];
    try {
      let flat = order.beginning();
      let ours = everyBeginning(machine, 'live');
      const pressed = new Set<string>();
      for (let step = 0; ; step++) {
        const theirs = flat.map((ending) => tellFlat(order, ending)).sort();
        const mine = ours.endings.map((ending) => tellOurs(machine, order, ending)).sort();
        // Two cycles through the same positions read alike, so the lists are compared as sets.
        const [a, b] = [[...new Set(theirs)].join('\n'), [...new Set(mine)].join('\n')];
        if (a !== b) result.wrong.push(`${seed}: ${done.join(', ')}\nbrute force:\n${a}\nours:\n${b}`);
        if (!ours.complete) result.wrong.push(`${seed}: called incomplete`);
        if (theirs.length > 1) result.races++;
        if (theirs.some((text) => text.endsWith('for ever'))) result.forEver++;
        if (theirs.some((text) => /blown -F|lost true/.test(text))) result.tripped++;
        if (a !== b || step === 3 || buttons.length === 0 || flat.flat().length > 60) break;
        const { name } = random.pick(buttons);
        const press = !pressed.delete(name);
        if (press) pressed.add(name);
        done.push(`${press ? 'press' : 'release'} ${name}`);
        const act: Act = { kind: press ? 'press' : 'release', device: name };
        flat = order.after(flat, name, press ? 1 : 0);
        ours = everyOutcome(machine, ours, act);
      }
      result.compared++;
    } catch (error) {
      if (!(error instanceof TooMany)) throw error;
      result.tooMany++;
    }
  }
  return result;
}

/**
 * No feedback: each coil behind contacts of buttons and earlier relays only. What makes order matter all the same is a
 * coil that lands between its limits and so remembers: lamps in series with it, bridged now and then.
 */
function forwardCircuit(random: Random, fuses: 0 | 2): Circuit {
  const feed = (): string => (fuses === 0 ? 'A:L+' : `-X90:${random.int(1, 2)}`);
  const wirer = new Wirer(random);
  const buttons = Array.from({ length: random.int(1, 2) }, (_, index) => manyPoled(`-S${index + 1}`, 6));
  for (const { name } of buttons) wirer.stock(name, relayPoles(6));
  const devices: Device[] = [...buttons];
  const extra = fusePaths(fuses);
  for (let index = 1; index <= 4; index++) {
    const coil = `-K${index}`;
    const name = `-P${index}`;
    const series = random.chance(0.6);
    const earlier = wirer.free();
    if (earlier.length === 0) break;
    const net = (from: string, to: string): void =>
      wirer.wire(randomTree(random, wirer.free().length > 0 ? wirer.free() : earlier, 1), from, to);
    devices.push(relay(coil));
    if (!series) {
      net(feed(), `${coil}:A1`);
      extra.push(`${coil}:A2 A:L-`);
    } else {
      devices.push(lamp(name, rated(24), random.pick([0.5, 1, 2])));
      extra.push(`${feed()} ${name}:X1-X2 ${coil}:A1`, `${coil}:A2 A:L-`);
      if (random.chance(0.9)) net(feed(), `${coil}:A1`);
      if (random.chance(0.6)) net(`${coil}:A1`, 'A:L-');
    }
    wirer.stock(coil, relayPoles(4));
  }
  if (fuses > 0)
    for (let count = random.int(1, 2); count > 0 && wirer.free().length > 0; count--)
      wirer.wire(randomTree(random, wirer.free(), 1), feed(), random.chance(0.7) ? 'A:L-' : feed());
  const board: Device = { kind: 'terminals', name: '-X90', count: 2 };
  return wired({
    devices: [...fusesOf(fuses), ...devices, ...wirer.boards(), board],
    paths: [...wirer.paths, ...extra],
  });
}

/** Two pairs of relays with feedback of their own, which only a button and a relay in front of both have in common. */
function sharedCircuit(random: Random): Circuit {
  const wirer = new Wirer(random);
  const buttons = ['-S1', '-S2'].map((name) => manyPoled(name, 6));
  for (const { name } of buttons) wirer.stock(name, relayPoles(6));
  const relays = ['-K1', '-K2', '-K3', '-K4', '-K5'].map((name) =>
    random.chance(0.15) ? latching(name) : relay(name),
  );
  for (const { name } of relays) wirer.stock(name, relayPoles(4));
  const extra: string[] = [];
  const net = (allowed: readonly string[], to: string, leaves: number): void => {
    const free = wirer.free().filter((name) => allowed.includes(name));
    if (free.length === 0) return;
    try {
      wirer.wire(randomTree(random, free, leaves), 'A:L+', to);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  };
  relays.forEach(({ name, kind }, index) => {
    const pair = index === 0 ? [] : index < 3 ? ['-K2', '-K3'] : ['-K4', '-K5'];
    const allowed = index === 0 ? ['-S1'] : [...pair, ...pair, '-K1', random.pick(['-S1', '-S2', '-K1'])];
    for (const coil of kind === 'latching-relay' ? ['A', 'B'] : ['A']) {
      net(allowed, `${name}:${coil}1`, index === 0 ? 1 : random.int(1, 3));
      extra.push(`${name}:${coil}2 A:L-`);
    }
  });
  return wired({ devices: [...buttons, ...relays, ...wirer.boards()], paths: [...wirer.paths, ...extra] });
}

describe('every outcome against brute force over all orders', () => {
  it('finds the same endings in 2,000 random circuits with feedback, latching relays, timers, fuses and series lamps', () => {
    // The more states brute force may look at, the larger the circuits that are compared; most are found small.
    const [large, small] = [
      compare('feedback', drawn(300), feedbackCircuit),
      compare('more feedback', drawn(1700), feedbackCircuit, 150),
    ];
    expect([...large.wrong, ...small.wrong].slice(0, 3)).toEqual([]);
    expect(large.races + small.races).toBeGreaterThan(atLeast(100));
    expect(large.forEver + small.forEver).toBeGreaterThan(atLeast(300));
    expect(large.tripped + small.tripped).toBeGreaterThan(atLeast(100));
  });

  it('finds the same endings in 300 circuits without feedback whose coils may land between their limits', () => {
    const { wrong, races } = compare('forward', drawn(300), (random) => forwardCircuit(random, 0));
    expect(wrong.slice(0, 3)).toEqual([]);
    expect(races).toBeGreaterThan(atLeast(5));
  });

  it('finds the same endings in 300 such circuits behind two fuses that short circuits may blow on the way', () => {
    const { wrong, tripped } = compare('blowing', drawn(300), (random) => forwardCircuit(random, 2));
    expect(wrong.slice(0, 3)).toEqual([]);
    expect(tripped).toBeGreaterThan(atLeast(100));
  });

  it('finds the same endings in 50 circuits of two parts that share a button and a relay', () => {
    const { wrong, races } = compare('shared', drawn(50), sharedCircuit, 1500);
    expect(wrong.slice(0, 3)).toEqual([]);
    expect(races).toBeGreaterThan(atLeast(10));
  });

  it('finds the same endings in 2,000 circuits strewn at random', () => {
    const supplies = [{ name: 'A', volts: 24, current: 'DC' as const, earthed: false }];
    const { wrong, races } = compare('strewn', drawn(2000), (random) =>
      tangle(random, {
        supplies,
        volts: [24],
        relays: random.int(2, 4),
        loads: 1,
        junctions: random.int(2, 5),
      }),
    );
    expect(wrong.slice(0, 3)).toEqual([]);
    expect(races).toBeGreaterThan(atLeast(5));
  });
});
