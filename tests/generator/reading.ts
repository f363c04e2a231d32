/** A circuit handled as somebody stands before it: devices found by their texts, acts done, lamps read. */
import type { Circuit, Device, DeviceKind } from '../../shared/circuit.ts';
import type { Act, Fault } from '../../shared/scenario.ts';
import type { Solution } from '../../shared/solution.ts';
import type { Draft, Family } from '../../src/generator/index.ts';
import { families, randomOf } from '../../src/generator/index.ts';
import { solve } from '../../src/solver/index.ts';

export interface Reading {
  /** Lamps are those that say something; what hangs on a drawing with a number alone is left out. */
  readonly solution: Solution;
  /** Steady, or what else it comes to. */
  readonly outcome: Solution['outcome']['kind'];
  /** State of the one lamp whose text matches. */
  lamp(text: RegExp): string;
  operated(name: string): boolean;
}

export interface Panel {
  readonly circuit: Circuit;
  readonly draft: Draft;
  /** Designations of a kind whose text matches, in the order of the circuit. */
  all(kind: DeviceKind, text?: RegExp): string[];
  /** The only one. */
  one(kind: DeviceKind, text?: RegExp): string;
  device(name: string): Device;
  after(acts: readonly Act[], faults?: readonly Fault[]): Reading;
}

/** Whether a lamp's words say something of the plant. */
const speaks = (circuit: Circuit, lamp: string): boolean =>
  !/^Lamp \d+$/.test(circuit.devices.find(({ name }) => name === lamp)?.text ?? '');

/** Relays that something in the field moves; the others follow them. */
export const watching = ({ circuit: { paths }, all }: Panel): string[] =>
  all('relay').filter((relay) =>
    paths.some(
      ({ steps }) =>
        steps.some(({ device, enter }) => device === relay && enter === 'A1') &&
        steps.some(({ device }) => device.startsWith('-B')),
    ),
  );

export function panelOf(draft: Draft): Panel {
  const { circuit } = draft;
  const find = (kind: DeviceKind, text = /(?:)/): string[] =>
    circuit.devices
      .filter((device) => device.kind === kind && text.test(device.text ?? ''))
      .map(({ name }) => name);
  const one = (kind: DeviceKind, text?: RegExp): string => {
    const [name, ...more] = find(kind, text);
    if (name === undefined || more.length > 0)
      throw new Error(`${1 + more.length} of ${kind} ${text} in ${circuit.title}`);
    return name;
  };
  return {
    circuit,
    draft,
    all: find,
    one,
    device: (name) => circuit.devices.find((device) => device.name === name)!,
    after(acts, faults = []) {
      const solved = solve(circuit, { start: 'live', faults: [...faults], acts: [...acts] }).solution;
      const lamps = Object.fromEntries(
        Object.entries(solved.lamps).filter(([name]) => speaks(circuit, name)),
      );
      const solution = { ...solved, lamps };
      return {
        solution,
        outcome: solution.outcome.kind,
        lamp: (text) => solution.lamps[one('lamp', text)]!,
        operated: (name) => solution.coils[name]!.operated,
      };
    },
  };
}

/** `count` drafts of a family at one size, each as a panel. */
export const panels = (family: Family, size: number, count: number): Panel[] =>
  Array.from({ length: count }, (_, index) =>
    panelOf(family.draft(randomOf(`classic-${family.id}-${index}`), { size })),
  );

export const press = (device: string): Act => ({ kind: 'press', device });
export const release = (device: string): Act => ({ kind: 'release', device });
export const tap = (device: string): Act[] => [press(device), release(device)];
export const make = (device: string): Act => ({ kind: 'make', device });
export const breaks = (device: string): Act => ({ kind: 'break', device });
export const open = (device: string): Act => ({ kind: 'open', device });
export const close = (device: string): Act => ({ kind: 'close', device });
export const wait = (seconds: number): Act => ({ kind: 'wait', seconds });

/** The acts that actuate a field contact and let it go, whatever its first contact is. */
export function actuated(panel: Panel, name: string): { on: Act; off: Act } {
  const device = panel.device(name);
  const first = 'contacts' in device ? device.contacts[0]!.form : 'make';
  return first === 'break' ? { on: breaks(name), off: make(name) } : { on: make(name), off: breaks(name) };
}

/** Does something with some panels of a family, of each of these sizes. */
export function eachPanel(
  id: string,
  sizes: readonly number[],
  check: (panel: Panel, size: number) => void,
): void {
  const family = families.find((each) => each.id === id)!;
  for (const size of sizes) for (const panel of panels(family, size, 12)) check(panel, size);
}
