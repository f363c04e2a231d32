/** The conductors of a circuit as numbered nodes, with the faults of its wiring in them. */
import type { Circuit, TerminalRef } from '../../shared/circuit.ts';
import type { Fault } from '../../shared/scenario.ts';
import { type Anatomy, supplyTerminals } from '../circuit/anatomy/index.ts';
import { Joining } from '../graph/index.ts';

/** A loose terminal, or a cut wire, where it parts two nodes. */
export interface OpenPlace {
  readonly at: TerminalRef;
  readonly a: number;
  readonly b: number;
}

export interface Nodes {
  /** Node of each terminal, `-K3:11`. */
  readonly nodeOf: ReadonlyMap<TerminalRef, number>;
  /** Node of a terminal of the device in this place of the circuit's list. */
  nodeAt(device: number, terminal: string): number;
  readonly open: readonly OpenPlace[];
  readonly count: number;
}

/** Only faults of the wiring concern the numbering of conductors; the others change parts. */
interface WiringFaults {
  readonly loose: ReadonlySet<string>;
  readonly cut: ReadonlySet<string>;
  readonly crossed: ReadonlyMap<string, string>;
}

const wire = (one: string, other: string): string => (one < other ? `${one} ${other}` : `${other} ${one}`);

function wiringFaults(faults: readonly Fault[]): WiringFaults {
  const crossed = new Map<string, string>();
  for (const fault of faults) {
    if (fault.kind === 'crossed') {
      crossed.set(fault.one, fault.other);
      crossed.set(fault.other, fault.one);
    }
  }
  return {
    loose: new Set(faults.flatMap((fault) => (fault.kind === 'loose' ? [fault.at] : []))),
    cut: new Set(faults.flatMap((fault) => (fault.kind === 'cut' ? [wire(fault.from, fault.to)] : []))),
    crossed,
  };
}

/** A number for each terminal: those of the supplies, then of each device, and then places inside it that no wire comes to. */
function numberTerminals(circuit: Circuit, anatomies: readonly Anatomy[]) {
  const own = new Map<TerminalRef, number>();
  const firstOf = new Int32Array(anatomies.length);
  for (const supply of circuit.supplies)
    for (const terminal of supplyTerminals(supply)) own.set(`${supply.name}:${terminal}`, own.size);
  circuit.devices.forEach(({ name }, device) => {
    firstOf[device] = own.size;
    const { terminals, loads } = anatomies[device]!;
    for (const terminal of terminals) own.set(`${name}:${terminal}`, own.size);
    for (const { to } of loads) {
      const inner = `${name}:${to}` as const;
      if (!own.has(inner)) own.set(inner, own.size);
    }
  });
  return { own, firstOf };
}

interface Apart {
  readonly at: TerminalRef;
  readonly from: number;
  readonly to: number;
}

/**
 * Joins what wires join. Where a terminal may be loose or its conductors may be exchanged it is two points, the device's own
 * terminal and the end of the conductors that come to it; elsewhere one.
 */
function joinWires(
  { paths }: Circuit,
  own: ReadonlyMap<TerminalRef, number>,
  faults: WiringFaults,
): { joining: Joining; apart: readonly Apart[] } {
  const ends = faults.loose.size + faults.crossed.size > 0 ? own.size : 0;
  const joining = new Joining(own.size + ends);
  const apart: Apart[] = [];
  const endOf = (terminal: TerminalRef): number => ends + own.get(terminal)!;
  if (ends > 0) {
    for (const [terminal, point] of own) {
      const carried = endOf((faults.crossed.get(terminal) ?? terminal) as TerminalRef);
      if (faults.loose.has(terminal)) apart.push({ at: terminal, from: point, to: carried });
      else joining.join(point, carried);
    }
  }
  for (const { steps } of paths) {
    for (let index = 1; index < steps.length; index++) {
      const before = steps[index - 1]!;
      const after = steps[index]!;
      const from: TerminalRef = `${before.device}:${before.leave ?? before.enter}`;
      const to: TerminalRef = `${after.device}:${after.enter}`;
      if (faults.cut.size > 0 && faults.cut.has(wire(from, to)))
        apart.push({ at: from, from: endOf(from), to: endOf(to) });
      else joining.join(endOf(from), endOf(to));
    }
  }
  return { joining, apart };
}

/** Numbers the conductors: terminals that wires join share a node. A loose terminal is a node of its own, and so is each side of a cut wire. */
export function nodesOf(circuit: Circuit, anatomies: readonly Anatomy[], faults: readonly Fault[]): Nodes {
  const { own, firstOf } = numberTerminals(circuit, anatomies);
  const { joining, apart } = joinWires(circuit, own, wiringFaults(faults));
  const numberOf = new Int32Array(own.size * 2).fill(-1);
  let count = 0;
  const nodeOfPoint = (point: number): number => {
    const root = joining.find(point);
    if (numberOf[root] === -1) numberOf[root] = count++;
    return numberOf[root]!;
  };
  const nodes = Int32Array.from({ length: own.size }, (_, point) => nodeOfPoint(point));
  // A terminal's point is known by where it stands in its device from here on: the map is made to tell its node.
  const nodeOf = own;
  for (const [terminal, point] of own) nodeOf.set(terminal, nodes[point]!);
  return {
    nodeOf,
    nodeAt(device, terminal) {
      const place = anatomies[device]!.terminals.indexOf(terminal);
      return place < 0
        ? nodeOf.get(`${circuit.devices[device]!.name}:${terminal}`)!
        : nodes[firstOf[device]! + place]!;
    },
    open: apart.map(({ at, from, to }) => ({ at, a: nodeOfPoint(from), b: nodeOfPoint(to) })),
    get count() {
      return count;
    },
  };
}
