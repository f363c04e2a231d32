/** Pairs of points worth measuring between, each for another thing to know about what a meter shows. */
import type { Circuit, TerminalRef } from '../../../../shared/circuit.ts';
import type { Fault, Scenario } from '../../../../shared/scenario.ts';
import { circuitView, readAs } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';
import { isClosed, meter, traceAll } from '../../../solver/index.ts';
import { certain, rightSolver, type Standpoint } from '../../solving.ts';

export interface MeterPoints {
  readonly scenario: Scenario;
  readonly points: [TerminalRef, TerminalRef];
  readonly tolerance: number;
}

type Pair = readonly [TerminalRef, TerminalRef];

/** High enough that the lamp behind the contact stays dark: nearly the whole voltage is across the contact. */
const DIRTY_OHMS = 1_000_000;
/** Of the largest supply's voltage; a reading is right within it. */
const TOLERANCE = 0.05;

const ref = (device: string, terminal: string): TerminalRef => `${device}:${terminal}`;

/** Both sides of contacts that wires come to, closed ones or open ones. */
function acrossContacts({ machine, state }: Standpoint, wired: ReadonlySet<string>, closed: boolean): Pair[] {
  return machine.plan.switches.flatMap(({ device, from, to }, index): Pair[] => {
    if (from === to || !wired.has(`${device}:${from}`) || !wired.has(`${device}:${to}`)) return [];
    return isClosed(machine, state.at, index) === closed ? [[ref(device, from), ref(device, to)]] : [];
  });
}

function acrossLoads({ machine }: Standpoint, wired: ReadonlySet<string>): Pair[] {
  return machine.plan.loads.flatMap(({ device, from, to, role }): Pair[] =>
    role !== 'dirt' &&
    readAs(role) !== 'winding' &&
    wired.has(`${device}:${from}`) &&
    wired.has(`${device}:${to}`)
      ? [[ref(device, from), ref(device, to)]]
      : [],
  );
}

/** A point against a return: of its own supply, or of another one. */
function againstReturns(
  { machine, state }: Standpoint,
  wired: readonly TerminalRef[],
  isolated: boolean,
): Pair[] {
  const returns = machine.plan.supplies.map(({ name, poles }) => ref(name, poles.at(-1)!.terminal));
  return wired.flatMap((point) =>
    returns.flatMap((common): Pair[] => {
      if (point === common || machine.plan.nodeOf.get(point) === machine.plan.nodeOf.get(common)) return [];
      return meter(machine, state, point, common).floating === isolated ? [[point, common]] : [];
    }),
  );
}

/** Contacts of relays on the path of a lit lamp. */
function onLitPaths({ machine, state }: Standpoint): { from: TerminalRef; to: TerminalRef }[] {
  return traceAll(machine, state).flatMap(({ load, fed, path }) => {
    const role = machine.plan.loads.find(({ id }) => id === load)?.role;
    if (!fed || role === undefined || role === 'dirt' || readAs(role) !== 'lamp') return [];
    return path.flatMap(({ device, enter, leave }) => {
      const contact = machine.plan.switches.find(
        (each) =>
          each.device === device &&
          [each.from, each.to].includes(enter) &&
          [each.from, each.to].includes(leave ?? ''),
      );
      const drive = contact && machine.plan.mechanisms[contact.mechanism]?.drive;
      return contact && drive !== 'feed' && drive !== 'act'
        ? [{ from: ref(device, contact.from), to: ref(device, contact.to) }]
        : [];
    });
  });
}

/** So that a reading with direct current is a positive one. */
function turned({ machine, state }: Standpoint, [first, second]: Pair): [TerminalRef, TerminalRef] {
  const { volts } = meter(machine, state, first, second);
  return volts < 0 ? [second, first] : [first, second];
}

/** Whether a reading could be argued about: something between nothing and a part of the voltage. */
function clear({ machine, state }: Standpoint, [first, second]: Pair, tolerance: number): boolean {
  const { volts, floating } = meter(machine, state, first, second);
  return floating || Math.abs(volts) < tolerance / 5 || Math.abs(volts) > 2 * tolerance;
}

/** Chooses one sort of pair, then one pair; a dirty contact is put in for some. */
export function proposePoints(circuit: Circuit, scenario: Scenario, random: Random): MeterPoints | undefined {
  const solver = rightSolver();
  const standpoint = solver.solve(circuit, scenario)!;
  const wired = [...circuitView(circuit).wired];
  const set = new Set<string>(wired);
  const volts = Math.max(...circuit.supplies.map((supply) => supply.volts));
  const tolerance = Math.round(TOLERANCE * volts * 100) / 100;
  const sorts: (() => { pair: Pair; faults?: readonly Fault[] } | undefined)[] = [
    () => pick(acrossContacts(standpoint, set, false)),
    () => pick(acrossContacts(standpoint, set, true)),
    () => pick(acrossLoads(standpoint, set)),
    () => pick(againstReturns(standpoint, wired, false)),
    () => (circuit.supplies.length > 1 ? pick(againstReturns(standpoint, wired, true)) : undefined),
    () => {
      const contacts = onLitPaths(standpoint);
      if (contacts.length === 0 || scenario.faults.length > 0) return undefined;
      const { from, to } = random.pick(contacts);
      return { pair: [from, to], faults: [{ kind: 'dirty', from, to, ohms: DIRTY_OHMS }] };
    },
  ];
  function pick(pairs: readonly Pair[]): { pair: Pair } | undefined {
    return pairs.length === 0 ? undefined : { pair: random.pick(pairs) };
  }
  for (const sort of random.shuffle(sorts)) {
    const found = sort();
    if (!found) continue;
    const { pair, faults } = found;
    const measured = faults ? { ...scenario, faults: [...faults] } : scenario;
    const there = faults ? solver.solve(circuit, measured)! : standpoint;
    if (!clear(there, pair, tolerance) || !certain(solver.machine(circuit, measured), measured)) continue;
    return { scenario: measured, points: turned(there, pair), tolerance };
  }
  return undefined;
}
