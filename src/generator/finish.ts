/** From a board to a draft: the groups of lines ordered and put on sheets, the devices named, everything else renamed with them. */
import type { Circuit, Path, Sheet, Step } from '../../shared/circuit.ts';
import type { Act, Fault, Scenario } from '../../shared/scenario.ts';
import { anatomyOf, readAs, traitsOf } from '../circuit/index.ts';
import type { Board, Group, Zone } from './board.ts';
import { terminalRow } from './devices/index.ts';
import { designations, renamedAct, renamedItem, renamedStep } from './numbering.ts';
import type { Random } from './random.ts';
import { addReadouts, type Followers, type Legs } from './readouts.ts';
import type { Draft } from './types.ts';

export interface Finishing {
  readonly family: string;
  readonly title: string;
  /** How many sheets at most; zones are never divided before they are parted. */
  readonly sheets: number;
  /** Act lists, the first being the one meant. */
  readonly acts: readonly (readonly Act[])[];
  /** Faults present in the act list of the same place. */
  readonly faults?: readonly (readonly Fault[])[];
  readonly ends?: Draft['ends'];
  /** The legs that lamps may hang on besides the family's own; both where it is left out. */
  readonly legs?: Legs;
  /** Relays that follow the family's own: with size comes depth, not more of the same alone. */
  readonly followers?: Followers;
}

const ZONES: readonly Zone[] = ['power', 'control', 'lamps', 'inputs'];
const TITLES: Readonly<Record<Zone, string>> = {
  power: 'Power',
  control: 'Relays',
  lamps: 'Lamps',
  inputs: 'Controller inputs',
};

/**
 * Groups in the order of the drawing. Power comes first; the rest is by zone, or mixed where all is on one sheet. What hangs on one supply
 * stays together, the first supply first.
 */
function ordered(random: Random, groups: readonly Group[], sheets: number): Group[] {
  const supplyOf = ({ source }: Group): string => source?.name ?? '';
  const shuffled = random.shuffle(groups);
  const supplies = [...new Set(shuffled.map(supplyOf))].sort();
  const mixed = supplies.flatMap((name) => shuffled.filter((group) => supplyOf(group) === name));
  if (sheets === 1 && random.chance(0.5)) {
    return [...mixed.filter(({ zone }) => zone === 'power'), ...mixed.filter(({ zone }) => zone !== 'power')];
  }
  return ZONES.flatMap((zone) => mixed.filter((group) => group.zone === zone));
}

/** Which sheet, from 0, each group is on: first the zones are parted, then the longest run is halved. */
function sheeted(groups: readonly Group[], sheets: number): number[] {
  const runs: Group[][] = [];
  for (const group of groups) {
    const run = runs.at(-1);
    if (run && run[0]!.zone === group.zone) run.push(group);
    else runs.push([group]);
  }
  while (runs.length > sheets) {
    const [last, before] = [runs.pop()!, runs.pop()!];
    runs.push([...before, ...last]);
  }
  for (;;) {
    const longest = runs.reduce((best, run, index) => (run.length > runs[best]!.length ? index : best), 0);
    const run = runs[longest]!;
    if (runs.length >= sheets || run.length < 4) break;
    const half = Math.ceil(run.length / 2);
    runs.splice(longest, 1, run.slice(0, half), run.slice(half));
  }
  return runs.flatMap((run, sheet) => run.map(() => sheet));
}

const ends = (step: Step | 'feed' | 'return' | undefined): readonly Step[] =>
  step === undefined || step === 'feed' || step === 'return' ? [] : [step];

function pathsOf(groups: readonly Group[], sheets: readonly number[], first: number): Path[] {
  const fed = new Set<string>();
  return groups.flatMap(({ source, lines }, index) =>
    lines.map(({ from, steps, to }) => {
      const feed: Step[] = [];
      if (from === 'feed' && source) {
        const [pole, protection] = source.feed as [Step, Step];
        if (fed.has(source.name)) feed.push({ device: protection.device, enter: protection.leave! });
        else feed.push(pole, protection);
        fed.add(source.name);
      }
      const back = to === 'return' && source ? [source.return] : [];
      return {
        sheet: first + sheets[index]!,
        steps: [...feed, ...ends(from), ...steps, ...ends(to), ...back],
      };
    }),
  );
}

/** A longer row takes more room on a drawing than what the drawing is about. */
const MOST_TERMINALS = 16;

/** Leads every conductor to and from the field over a row of terminals, with a few left free. */
function overTerminals(random: Random, circuit: Circuit): Circuit {
  const field = new Set(
    circuit.devices.filter((device) => traitsOf(device).movedBy !== undefined).map(({ name }) => name),
  );
  let count = 0;
  const terminal = (): Step => ({ device: '-X1', enter: String(++count) });
  const paths = circuit.paths.map(({ sheet, steps }) => ({
    sheet,
    steps: steps.flatMap((step, index) => {
      if (!field.has(step.device)) return [step];
      const before = index > 0 && !field.has(steps[index - 1]!.device) ? [terminal()] : [];
      const after = index < steps.length - 1 && step.leave !== undefined ? [terminal()] : [];
      return [...before, step, ...after];
    }),
  }));
  if (count === 0 || count > MOST_TERMINALS) return circuit;
  const row = terminalRow('-X1', count + random.int(0, 4));
  return { ...circuit, devices: [...circuit.devices, row], paths };
}

const renamedFault = (fault: Fault, names: ReadonlyMap<string, string>): Fault => {
  const item = (text: string): string => renamedItem(text, names);
  switch (fault.kind) {
    case 'loose':
      return { ...fault, at: item(fault.at) };
    case 'crossed':
      return { ...fault, one: item(fault.one), other: item(fault.other) };
    case 'blown':
    case 'stuck':
      return { ...fault, device: item(fault.device) };
    default:
      return { ...fault, from: item(fault.from), to: item(fault.to) };
  }
};

/** What is asked about, in the order in which it stands on the drawing. */
function asked(circuit: Circuit): Pick<Draft, 'lamps' | 'inputs' | 'relays'> {
  const loads = new Map(circuit.devices.map((device) => [device.name, anatomyOf(device).loads]));
  const lamps = new Set<string>();
  const inputs = new Set<string>();
  const relays = new Set<string>();
  for (const { steps } of circuit.paths) {
    for (const { device, enter } of steps) {
      for (const { role, from, point } of loads.get(device) ?? []) {
        const as = readAs(role);
        if (as === 'lamp') lamps.add(device);
        else if (as === 'input' && point === enter) inputs.add(`${device}:${point}`);
        else if (as === 'coil' && from === enter) relays.add(device);
      }
    }
  }
  return { lamps: [...lamps], inputs: [...inputs], relays: [...relays] };
}

/** Finishes a board. */
export function finish(random: Random, board: Board, wishes: Finishing): Draft {
  const { family, title, acts, faults = [], legs = ['make', 'break'], followers = { count: 0 } } = wishes;
  addReadouts(random.child('readouts'), board, { legs, followers });
  const groups = ordered(random, board.groups, wishes.sheets);
  const placed = sheeted(groups, wishes.sheets);
  const first = random.chance(0.5) ? 1 : random.int(2, 9);
  const last = placed.at(-1) ?? 0;
  const sheets: Sheet[] = Array.from({ length: last + 1 }, (_, index) => ({
    number: first + index,
    ...(last > 0 ? { title: TITLES[groups[placed.indexOf(index)]!.zone] } : {}),
  }));
  const bare: Circuit = {
    title,
    supplies: board.supplies,
    devices: board.devices(),
    sheets,
    paths: pathsOf(groups, placed, first),
  };
  const plain = random.chance(0.12) ? overTerminals(random, bare) : bare;
  const names = designations(random, plain.devices, plain.paths);
  const circuit: Circuit = {
    ...plain,
    devices: plain.devices.map((device) => ({ ...device, name: names.get(device.name)! })),
    paths: plain.paths.map(({ sheet, steps }) => ({
      sheet,
      steps: steps.map((step) => renamedStep(step, names)),
    })),
  };
  const scenarios = acts.map(
    (list, index): Scenario => ({
      start: 'live',
      faults: (faults[index] ?? []).map((fault) => renamedFault(fault, names)),
      acts: list.map((act) => renamedAct(act, names)),
    }),
  );
  const [scenario = { start: 'live', faults: [], acts: [] } as Scenario, ...others] = scenarios;
  return { family, circuit, scenario, others, ...asked(circuit), ends: wishes.ends ?? 'steady' };
}
