/** A circuit looked at from all sides: devices by name, wires, and the conductors they make. */
import type { Circuit, Device, Step, Supply, TerminalRef } from '../../shared/circuit.ts';
import { JoinedSets, once } from '../graph/index.ts';
import { type Anatomy, anatomyOf, type Contact, supplyTerminals } from './anatomy/index.ts';
import { entryOf, exitOf, terminalRefOf } from './terminal-names.ts';

export interface DeviceView {
  readonly device: Device;
  /** In the circuit's list. */
  readonly index: number;
  readonly anatomy: Anatomy;
}

/** A wire between two neighbours of a path. `step` is the index of the second. */
export interface Wire {
  readonly from: TerminalRef;
  readonly to: TerminalRef;
  readonly path: number;
  readonly step: number;
}

export interface Conductors {
  /** Terminals that wires join, whatever the devices do. Each terminal of each device and supply is in one of them. */
  readonly groups: readonly (readonly TerminalRef[])[];
  /** Index of a terminal's group. */
  readonly of: ReadonlyMap<TerminalRef, number>;
}

export interface CircuitView {
  readonly circuit: Circuit;
  /** The first device of each designation. */
  readonly devices: ReadonlyMap<string, DeviceView>;
  readonly supplies: ReadonlyMap<string, Supply>;
  readonly wires: readonly Wire[];
  /** Terminals that a wire comes to. */
  readonly wired: ReadonlySet<TerminalRef>;
  readonly conductors: Conductors;
}

/** A circuit from all sides; looked at once for each circuit record, which never changes. */
export const circuitView = once(viewOf);

function viewOf(circuit: Circuit): CircuitView {
  const devices = new Map<string, DeviceView>();
  circuit.devices.forEach((device, index) => {
    if (!devices.has(device.name)) devices.set(device.name, { device, index, anatomy: anatomyOf(device) });
  });
  const wires = wiresOf(circuit);
  return {
    circuit,
    devices,
    supplies: new Map(circuit.supplies.map((supply) => [supply.name, supply])),
    wires,
    wired: new Set(wires.flatMap(({ from, to }) => [from, to])),
    conductors: conductorsOf(circuit, wires),
  };
}

export const deviceOf = (circuit: Pick<Circuit, 'devices'>, name: string): Device | undefined =>
  circuit.devices.find((device) => device.name === name);

/** The contact that a step of a path goes through, either way round; undefined where it goes through none. */
export function contactOf(circuit: Pick<Circuit, 'devices'>, step: Step): Contact | undefined {
  const { device, enter, leave } = step;
  const found = leave === undefined ? undefined : deviceOf(circuit, device);
  return (
    found &&
    anatomyOf(found).contacts.find(
      ({ from, to }) => (from === enter && to === leave) || (from === leave && to === enter),
    )
  );
}

/** Terminals of a device, in the order of the drawing. */
export const terminalsOf = (device: Device): readonly string[] => anatomyOf(device).terminals;

/** Every wire, in the order of the paths. Two may join the same terminals. */
export const wiresOf = ({ paths }: Circuit): Wire[] =>
  paths.flatMap(({ steps }, path) =>
    steps.slice(1).map((step, index) => ({
      from: exitOf(steps[index]!),
      to: entryOf(step),
      path,
      step: index + 1,
    })),
  );

export function conductorsOf(circuit: Circuit, wires: readonly Wire[] = wiresOf(circuit)): Conductors {
  const sets = new JoinedSets<TerminalRef>();
  for (const supply of circuit.supplies)
    for (const terminal of supplyTerminals(supply)) sets.add(terminalRefOf(supply.name, terminal));
  for (const device of circuit.devices)
    for (const terminal of terminalsOf(device)) sets.add(terminalRefOf(device.name, terminal));
  // A terminal that its device hasn't got is a place of its own: a drawing rule speaks of it.
  for (const { steps } of circuit.paths)
    for (const step of steps) {
      sets.add(entryOf(step));
      sets.add(exitOf(step));
    }
  for (const { from, to } of wires) sets.join(from, to);
  const groups = sets.sets();
  return { groups, of: new Map(groups.flatMap((group, index) => group.map((ref) => [ref, index] as const))) };
}
