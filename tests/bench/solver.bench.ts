/** What solving costs: one scenario against an independent circuit library, all conditions, and cost against size. */
import { performance } from 'node:perf_hooks';
import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { begin, copyState, doAct, machineOf, planOf, restoreState, solve } from '../../src/solver/index.ts';
import { button, lamp, rated, relay, wired } from '../support/hops.ts';
import { circuitOf } from '../support/written.ts';
import { median, type Row } from './row.ts';

const fedCircuit = (lines: readonly string[]): Circuit =>
  circuitOf(['supply A 24 V AC', '-F1 breaker', ...lines].join('\n'));

/**
 * Groups of twelve relays, with forty contacts where every relay has lamps: a seal-in that picks up chains, lamps on both
 * legs. `stopped`: all behind one emergency stop, so that the whole plant hangs together.
 */
function plant(groups: number, lamps = 12, stopped = false): Circuit {
  const devices: string[] = stopped ? ['-S9000 emergency-stop break 21-22'] : [];
  const paths: string[] = stopped ? ['-F1:2 -S9000:21-22'] : [];
  const feed = stopped ? '-S9000:22' : '-F1:2';
  for (let group = 0; group < groups; group++) {
    const name = (letter: string, number: number): string => `-${letter}${group * 50 + number}`;
    devices.push(`${name('S', 1)} push-button make`, `${name('S', 2)} push-button break`);
    for (let relay = 1; relay <= 12; relay++) devices.push(`${name('K', relay)} relay 4 poles`);
    paths.push(`${feed} ${name('S', 2)}:11-12 ${name('S', 1)}:13-14 ${name('K', 1)}:A1-A2 A:N`);
    paths.push(`${name('S', 1)}:13 ${name('K', 1)}:11-14 ${name('S', 1)}:14`);
    for (let relay = 2; relay <= 12; relay++) {
      const pole = 2 + (relay % 2);
      paths.push(
        `${feed} ${name('K', Math.max(1, Math.floor(relay / 3)))}:${pole}1-${pole}4 ${name('K', relay)}:A1-A2 A:N`,
      );
    }
    for (let relay = 1; relay <= lamps; relay++) {
      devices.push(`${name('H', relay)} lamp`, `${name('H', relay + 20)} lamp`);
      paths.push(`${feed} ${name('K', relay)}:41-44 ${name('H', relay)}:X1-X2 A:N`);
      paths.push(`${name('K', relay)}:42 ${name('H', relay + 20)}:X1-X2 A:N`);
    }
    // Two contacts more: forty in all.
    paths.push(`${feed} ${name('K', 12)}:11-14 ${name('H', 1)}:X1`);
  }
  return fedCircuit([...devices, 'A:L -F1:1-2', ...paths].flat());
}

/** Microseconds for one press of every start button from rest, or of the first one alone. */
function pressCost(circuit: Circuit, rounds: number, first = false): number {
  const machine = machineOf(planOf(circuit));
  const rest = begin(machine, 'live');
  const work = copyState(rest);
  const starts = circuit.devices.flatMap(({ kind, name }) =>
    kind === 'push-button' && Number(name.slice(2)) % 50 === 1 ? [name] : [],
  );
  const buttons = first ? starts.slice(0, 1) : starts;
  const once = (): void => {
    restoreState(work, rest);
    for (const device of buttons) doAct(machine, work, { kind: 'press', device });
  };
  for (let warm = 0; warm < rounds; warm++) once();
  const times = Array.from({ length: 15 }, () => {
    const from = performance.now();
    for (let round = 0; round < rounds; round++) once();
    return ((performance.now() - from) / rounds) * 1000;
  });
  return median(times);
}

/** The same circuit at rest for the circuit library: contacts as 10 mOhm or 10 MOhm, every node to earth by 1 GOhm, coils and lamps as resistors. */
async function peerCost(circuit: Circuit): Promise<number> {
  const { Simulation } = await import('eecircuit-engine');
  const plan = planOf(circuit);
  const node = (at: number): string => (at === plan.supplies[0]!.poles.at(-1)!.node ? '0' : `n${at}`);
  const lines = ['bench', `v1 n${plan.supplies[0]!.poles[0]!.node} 0 dc 24`];
  plan.switches.forEach(({ a, b, mechanism, closedIn }, index) => {
    const closed = mechanism >= 0 && closedIn.includes(plan.mechanisms[mechanism]!.live);
    lines.push(`rs${index} ${node(a)} ${node(b)} ${closed ? '10m' : '10meg'}`);
  });
  plan.loads.forEach(({ a, b, siemens }, index) => {
    lines.push(`rl${index} ${node(a)} ${node(b)} ${1 / siemens}`);
  });
  for (let at = 0; at < plan.nodes; at++) if (node(at) !== '0') lines.push(`rg${at} ${node(at)} 0 1g`);
  const simulation = new Simulation();
  await simulation.start();
  simulation.setNetList([...lines, '.op', '.end'].join('\n'));
  await simulation.runSim();
  const times: number[] = [];
  for (let round = 0; round < 25; round++) {
    const from = performance.now();
    await simulation.runSim();
    times.push((performance.now() - from) * 1000);
  }
  return median(times);
}

/** Milliseconds for all conditions of ten inputs of a circuit with relays on them. */
function allConditions(): number {
  const lines = Array.from({ length: 10 }, (_, at) => [
    `-B${at + 1} field-contact make`,
    `-K${at + 1} relay 4 poles`,
    `-H${at + 1} lamp`,
  ]).flat();
  const paths = Array.from({ length: 10 }, (_, at) => [
    `-F1:2 -B${at + 1}:13-14 -K${at + 1}:A1-A2 A:N`,
    `-F1:2 -K${at + 1}:11-14 -K${((at + 1) % 10) + 1}:21-22 -H${at + 1}:X1-X2 A:N`,
  ]).flat();
  const machine = machineOf(planOf(fedCircuit([...lines, 'A:L -F1:1-2', ...paths])));
  const work = begin(machine, 'live');
  const once = (): void => {
    let before = 0;
    for (let count = 1; count <= 1024; count++) {
      // Gray code: one input changes from each condition to the next.
      const now = (count ^ (count >> 1)) & 1023;
      const changed = now ^ before;
      const bit = 31 - Math.clz32(changed || 1);
      doAct(machine, work, { kind: now & changed ? 'make' : 'break', device: `-B${bit + 1}` });
      before = now;
    }
  };
  for (let warm = 0; warm < 5; warm++) once();
  return median(
    Array.from({ length: 15 }, () => {
      const from = performance.now();
      once();
      return performance.now() - from;
    }),
  );
}

/** Milliseconds of processor time for solving a circuit whole: every order, or reasoning, the run in time, and the traces. */
function solveCost(circuit: Circuit, acts: readonly Act[]): number {
  const once = (): number => {
    const from = process.cpuUsage();
    solve(circuit, { start: 'live', faults: [], acts: [...acts] });
    const { user, system } = process.cpuUsage(from);
    return (user + system) / 1000;
  };
  once();
  return median(Array.from({ length: 7 }, once));
}

const press = (device: string): Act => ({ kind: 'press', device });

/** Break contacts in a ring, each before the coil of the next relay. */
const breakRing = (relays: number): Circuit =>
  wired({
    devices: [button('-S1'), ...Array.from({ length: relays }, (_, at) => relay(`-K${at + 1}`))],
    paths: Array.from(
      { length: relays },
      (_, at) =>
        `${at === 0 ? 'A:L+ -S1:13-14' : '-S1:14'} -K${at === 0 ? relays : at}:11-12 -K${at + 1}:A1-A2 A:L-`,
    ),
  });

/** Four relays on two joined supplies, which feed each other back and never all rest. */
const unquiet: Circuit = wired({
  supplies: [
    { name: 'A', volts: 230, current: 'AC', earthed: false },
    { name: 'B', volts: 230, current: 'AC', earthed: true },
  ],
  devices: [
    ...[1, 2, 3, 4].map((at) => relay(`-K${at}`, 2, rated(230, 'AC'))),
    button('-S1'),
    button('-S2'),
    lamp('-H1', rated(230, 'AC'), 1),
    lamp('-H2', rated(230, 'AC'), 5),
    lamp('-H3', rated(230, 'AC')),
  ],
  paths: [
    'A:L -K3:11-14 -K1:A1-A2 A:N',
    '-H1:X1 -K2:11-14 -K1:A1',
    'B:L -K4:21-22 -K2:A1-A2 B:N',
    '-K4:11 -S1:13-14 -K2:A1',
    'B:L -K2:21-22 -K3:A1-A2 B:N',
    '-S2:14 -K1:11-14 -K3:A1',
    'B:L -S2:13-14 -K2:11-14 -S1:13-14 -K4:A1-A2 B:N',
    'A:L -H1:X1-X2 A:N',
    'B:L -K2:11-14 -H2:X1-X2 B:N',
    'A:L -K4:21-24 -K3:21-24 -H3:X1-X2 A:N',
    '-K1:24 -H1:X1',
  ],
});

/** The exponent with which cost grows from `sizes[0]` to the last: a straight line through the logarithms. */
function exponent(sizes: readonly number[], costs: readonly number[]): number {
  const x = sizes.map(Math.log);
  const y = costs.map(Math.log);
  const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [mx, my] = [mean(x), mean(y)];
  return (
    x.reduce((sum, value, at) => sum + (value - mx) * (y[at]! - my), 0) /
    x.reduce((sum, value) => sum + (value - mx) ** 2, 0)
  );
}

export async function bench(): Promise<Row[]> {
  const one = plant(1);
  const settling = pressCost(one, 20_000);
  const peer = await peerCost(one);
  const groups = [1, 3, 8, 25, 83];
  const costs = groups.map((count) => pressCost(plant(count, 3), Math.max(20, Math.round(4000 / count))));
  const together = groups.map((count) =>
    pressCost(plant(count, 3, true), Math.max(20, Math.round(4000 / count)), true),
  );
  const relays = groups.map((count) => 12 * count);
  return [
    {
      name: 'settling one press, 12 relays and 40 contacts',
      value: settling,
      unit: 'us',
      bound: 5,
      better: 'less',
      peer: 'operating point of eecircuit-engine',
      ratio: peer / settling,
    },
    {
      name: 'all 1,024 conditions of a 10-input circuit',
      value: allConditions(),
      unit: 'ms',
      bound: 20,
      better: 'less',
    },
    {
      name: 'solving four relays that feed each other back, after two acts (processor time)',
      value: solveCost(unquiet, [press('-S1'), press('-S2')]),
      unit: 'ms',
      bound: 200,
      better: 'less',
    },
    {
      name: 'solving a ring of 1,900 relays (processor time)',
      value: solveCost(breakRing(1900), [press('-S1')]),
      unit: 'ms',
      bound: 1000,
      better: 'less',
    },
    {
      name: 'growth of cost from 12 to 996 relays (exponent)',
      value: exponent(relays, costs),
      unit: '',
      bound: 1.3,
      better: 'less',
    },
    {
      name: 'the same where all hang on one emergency stop, one press',
      value: exponent(relays, together),
      unit: '',
      bound: 1.3,
      better: 'less',
    },
  ];
}
