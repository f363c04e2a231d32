/**
 * The solver against a truth table it has no part in: formulas found by enumerating the paths of the contact networks,
 * handed to logic-solver 2.0.1, a general satisfiability solver. For each circuit the question put to it is: is there
 * a condition of the inputs in which some lamp, coil or controller input differs from what our solver says? The answer
 * must be that there is none.
 */
import Logic from 'logic-solver';
import { describe, expect, it } from 'vitest';
import type { Circuit, Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { type Random, randomOf } from '../../src/generator/random.ts';
import {
  begin,
  doAct,
  everyBeginning,
  everyOutcome,
  machineOf,
  onlyState,
  planOf,
  type Readings,
  readState,
} from '../../src/solver/index.ts';
import { manyPoled, randomTree, relayPoles, Wirer } from '../support/contact-network.ts';
import { lamp, relay, wired } from '../support/hops.ts';
import { contactsOfDevice, netsOf, wiringOf } from '../support/wiring.ts';

interface Combinational {
  readonly circuit: Circuit;
  readonly inputs: readonly string[];
  /** What is fed, in the order of dependence: `-K1`, `-P1`, `-A1:I1`; each with the terminal its network ends at. */
  readonly outputs: readonly { readonly id: string; readonly terminal: string }[];
}

/** Relays whose coils are networks of inputs and earlier relays, then lamps and controller inputs behind the same. */
function combinational(random: Random, inputCount: number): Combinational {
  const wirer = new Wirer(random);
  const inputs = Array.from({ length: inputCount }, (_, index) => `-${index % 2 ? 'B' : 'S'}${index + 1}`);
  const devices: Device[] = inputs.map((name) =>
    manyPoled(name, 8, name.startsWith('-S') ? undefined : 'field-contact'),
  );
  for (const name of inputs) wirer.stock(name, relayPoles(8));
  const outputs: { id: string; terminal: string }[] = [];
  const feed = (id: string, terminal: string, leaves: number): void => {
    // An output without a network is never on.
    outputs.push({ id, terminal });
    const known = wirer.free();
    if (known.length === 0) return;
    // A network may ask for a contact that is used up: then the next smaller one is tried, down to a single make.
    for (let size = leaves; size >= 1; size--) {
      const before = wirer.paths.length;
      try {
        const inner = wirer.during(() => wirer.wire(randomTree(random, known, size), 'A:L+', terminal));
        // A contact across the network makes it more than series and parallel.
        const ends = random.sample([...inner, 'A:L+', terminal], 2);
        const free = wirer.free();
        if (inner.length > 0 && free.length > 0 && random.chance(0.5))
          wirer.wire(randomTree(random, free, 1), ends[0]!, ends[1]!);
        return;
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        wirer.paths.length = before;
      }
    }
  };
  const relays = random.int(1, 6);
  for (let index = 1; index <= relays; index++) {
    const name = `-K${index}`;
    devices.push(relay(name));
    feed(name, `${name}:A1`, random.int(1, 6));
    wirer.stock(name, relayPoles(4));
  }
  const lamps = random.int(1, 3);
  for (let index = 1; index <= lamps; index++) {
    devices.push(lamp(`-P${index}`));
    feed(`-P${index}`, `-P${index}:X1`, random.int(1, 6));
  }
  devices.push({ kind: 'inputs', name: '-A1', count: 2, type: '24V-3', points: [] });
  for (const point of ['I1', 'I2']) feed(`-A1:${point}`, `-A1:${point}`, random.int(1, 5));
  const returns = outputs.flatMap(({ id }) =>
    id.startsWith('-K') ? [`${id}:A2 A:L-`] : id.startsWith('-P') ? [`${id}:X2 A:L-`] : [],
  );
  return {
    circuit: wired({
      devices: [...devices, ...wirer.boards()],
      paths: [...wirer.paths, ...returns, '-A1:COM A:L-'],
    }),
    inputs,
    outputs,
  };
}

/** logic-solver takes a leading minus for "not", so designations go without theirs; a prefix keeps circuits apart. */
const variable = (prefix: string, designation: string): string => `${prefix}${designation.slice(1)}`;

/** For each output the formula of its network: any simple path of contacts from the pole, all of them closed. */
function formulas({ circuit, outputs }: Combinational, prefix: string): Map<string, Logic.Formula> {
  const open = wiringOf(circuit, [], new Map());
  const netOf = netsOf({
    ...open,
    joined: open.joined.filter(([a, b]) => a.endsWith('~') || b.endsWith('~')),
  });
  const edges = new Map<string, { to: string; literal: Logic.Formula }[]>();
  for (const { from, to, mechanism, makes } of circuit.devices.flatMap(contactsOfDevice)) {
    const literal = makes ? variable(prefix, mechanism) : Logic.not(variable(prefix, mechanism));
    for (const [a, b] of [
      [netOf(from), netOf(to)],
      [netOf(to), netOf(from)],
    ] as const)
      edges.set(a, [...(edges.get(a) ?? []), { to: b, literal }]);
  }
  const goalPaths = (goal: string): Logic.Formula[] => {
    const found: Logic.Formula[] = [];
    const walk = (net: string, seen: readonly string[], literals: readonly Logic.Formula[]): void => {
      if (net === goal) {
        found.push(Logic.and(...literals));
        return;
      }
      for (const { to, literal } of edges.get(net) ?? [])
        if (!seen.includes(to)) walk(to, [...seen, to], [...literals, literal]);
    };
    walk(netOf('A:L+'), [netOf('A:L+')], []);
    return found;
  };
  return new Map(outputs.map(({ id, terminal }) => [id, Logic.or(...goalPaths(netOf(terminal)))]));
}

/** Whether our solver says an output is on: lit, energised and operated, or 1. Anything in between is an error. */
function isOn({ coils, lamps, inputs }: Readings, id: string): boolean {
  const coil = coils[id];
  const word = coil ? `${coil.band} ${coil.operated}` : (lamps[id] ?? inputs[id]);
  if (['operates true', 'lit', '1'].includes(word!)) return true;
  if (['releases false', 'dark', '0'].includes(word!)) return false;
  throw new Error(`${id} is ${word}`);
}

const actOn = (input: string, on: boolean): Act =>
  input.startsWith('-S')
    ? { kind: on ? 'press' : 'release', device: input }
    : { kind: on ? 'make' : 'break', device: input };

interface Row {
  readonly condition: readonly boolean[];
  readonly on: readonly boolean[];
}

/** Our solver's truth table: all conditions in an order in which one input changes at a time (Gray code). */
function truthTable({ circuit, inputs, outputs }: Combinational): Row[] {
  const machine = machineOf(planOf(circuit));
  const state = begin(machine, 'live');
  const condition = inputs.map(() => false);
  const rows: Row[] = [];
  for (let number = 0; ; ) {
    const readings = readState(machine, state);
    rows.push({ condition: [...condition], on: outputs.map(({ id }) => isOn(readings, id)) });
    if (++number === 2 ** inputs.length) return rows;
    const input = 31 - Math.clz32(number & -number);
    condition[input] = !condition[input];
    if (!doAct(machine, state, actOn(inputs[input]!, condition[input]!))) throw new Error('not steady');
  }
}

interface Tabled {
  readonly seed: string;
  readonly made: Combinational;
  readonly rows: readonly Row[];
}

/**
 * The question put to the satisfiability solver for several circuits at once, because a fresh one costs milliseconds: a
 * condition in which the formulas of some circuit and its table disagree. Null when there is none.
 */
function disagreement(tables: readonly Tabled[]): { seed: string; condition: boolean[] } | null {
  const solver = new Logic.Solver();
  const differing = tables.map(({ made, rows }, index) => {
    const prefix = `c${index}.`;
    const literal = (name: string, positive: boolean): Logic.Formula =>
      positive ? variable(prefix, name) : Logic.not(variable(prefix, name));
    for (const [id, formula] of formulas(made, prefix))
      solver.require(Logic.equiv(variable(prefix, id), formula));
    return Logic.or(
      ...rows.map(({ condition, on }) =>
        Logic.and(
          ...made.inputs.map((input, at) => literal(input, condition[at]!)),
          Logic.or(...made.outputs.map(({ id }, at) => literal(id, !on[at]))),
        ),
      ),
    );
  });
  solver.require(Logic.or(...differing));
  const found = solver.solve()?.getMap();
  if (!found) return null;
  for (const [index, { seed, made, rows }] of tables.entries()) {
    const value = (name: string): boolean => found[variable(`c${index}.`, name)] ?? false;
    const condition = made.inputs.map(value);
    const row = rows.find((entry) => entry.condition.every((on, at) => on === condition[at]))!;
    if (made.outputs.some(({ id }, at) => value(id) !== row.on[at])) return { seed, condition };
  }
  throw new Error('a disagreement without a place');
}

const BATCH = 25;

function check(label: string, circuits: number, inputs: (index: number) => number) {
  const wrong: string[] = [];
  let conditions = 0;
  let outputs = 0;
  for (let start = 0; start < circuits; start += BATCH) {
    const tables = Array.from({ length: Math.min(BATCH, circuits - start) }, (_, offset): Tabled => {
      const seed = `${label} ${start + offset}`;
      const made = combinational(randomOf(seed), inputs(start + offset));
      return { seed, made, rows: truthTable(made) };
    });
    for (const { made, rows } of tables) {
      conditions += rows.length;
      outputs += made.outputs.length;
    }
    const found = disagreement(tables);
    if (found) wrong.push(JSON.stringify(found));
  }
  return { wrong, conditions, outputs };
}

describe('lamps, coils and controller inputs against formulas in a satisfiability solver', () => {
  it('agree under all conditions of 2,000 random circuits of 2 to 6 inputs', () => {
    const { wrong, conditions, outputs } = check('small', 2000, (index) => 2 + (index % 5));
    expect(wrong).toEqual([]);
    expect(conditions).toBe(400 * (4 + 8 + 16 + 32 + 64));
    expect(outputs).toBeGreaterThan(10_000);
  });

  it('agree under all 1,024 conditions of 30 random circuits of 10 inputs', () => {
    const { wrong, conditions } = check('ten', 30, () => 10);
    expect(wrong).toEqual([]);
    expect(conditions).toBe(30 * 1024);
  });

  it('would be found to disagree: one wrong entry in the table is always found', () => {
    for (let index = 0; index < 50; index++) {
      const random = randomOf(`spoilt ${index}`);
      const made = combinational(random, 4);
      const rows = truthTable(made);
      const at = random.int(0, rows.length - 1);
      const output = random.int(0, made.outputs.length - 1);
      const spoilt = rows.map((row, number) =>
        number === at ? { ...row, on: row.on.map((on, which) => (which === output ? !on : on)) } : row,
      );
      const found = disagreement([{ seed: 'spoilt', made, rows: spoilt }]);
      expect(found?.condition).toEqual(rows[at]!.condition);
    }
  });

  it('have one outcome under every order of operation in 150 of these circuits, and it is that of the table', () => {
    for (let index = 0; index < 150; index++) {
      const random = randomOf(`orders ${index}`);
      const made = combinational(random, 3);
      const machine = machineOf(planOf(made.circuit));
      let standing = everyBeginning(machine, 'live');
      const state = begin(machine, 'live');
      for (let step = 0; step < 4; step++) {
        const act = actOn(random.pick(made.inputs), random.chance(0.6));
        standing = everyOutcome(machine, standing, act);
        doAct(machine, state, act);
        expect(Array.from(onlyState(machine, standing)?.at ?? [])).toEqual(Array.from(state.at));
      }
    }
  });
});
