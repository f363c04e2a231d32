/**
 * A circuit as a graph of coloured vertices in which only structure is left: no designation, no text, no order of paths
 * or poles. Conductors, devices, contacts and loads are vertices; the two ends of a plain contact or load are alike.
 */
import type { Circuit, Device } from '../../shared/circuit.ts';
import { type Anatomy, anatomyOf, type LoadRole, readAs, supplyTerminals } from '../circuit/index.ts';
import { Joining } from '../graph/index.ts';

export interface Incidence {
  /** What each vertex is, in words that are the same in every circuit. */
  readonly kinds: readonly string[];
  /** Neighbours of each vertex, twice where two edges join the same two. */
  readonly edges: readonly (readonly number[])[];
}

const number = (value: number): string => String(Math.round(value * 1e6) / 1e6);

/** Whether the two ends of a load are not alike: an input's, a winding's. */
const hasEnds = (role: LoadRole): boolean => role === 'input' || readAs(role) === 'winding';

/** Whether a device leads through from terminal to terminal: nothing in it switches or uses the current. */
const leadsThrough = ({ contacts, loads }: Anatomy): boolean => contacts.length + loads.length === 0;

/** What a device is beyond its name and texts. Its contacts are told by their forms, so that poles may change places. */
function kindOf(device: Device, anatomy: Anatomy): string {
  const { contacts, mechanisms, loads } = anatomy;
  const forms = contacts.map(
    ({ form, closedIn, main, changeover }) => `${form}${closedIn.join('')}${main}${changeover}`,
  );
  const parts = [
    device.kind,
    forms.sort().join(),
    mechanisms
      .map(({ positions, delays, amps }) => `${positions.length} ${delays.join()} ${amps ?? ''}`)
      .join(),
    loads.map(({ role, ohms, volts, current }) => `${role} ${number(ohms)} ${volts} ${current ?? ''}`).join(),
  ];
  if (leadsThrough(anatomy)) parts.push(String(anatomy.terminals.length));
  return parts.join('; ');
}

/** Which terminals wires join. Terminals are numbered part by part, supplies first. */
class Wiring {
  private readonly parts = new Map<
    string,
    { readonly from: number; readonly terminals: readonly string[] }
  >();
  private readonly joining: Joining;
  private readonly joined: Int32Array;

  constructor({ supplies, paths }: Circuit, devices: readonly (readonly [Device, Anatomy])[]) {
    let count = 0;
    const add = (name: string, terminals: readonly string[]): void => {
      this.parts.set(name, { from: count, terminals });
      count += terminals.length;
    };
    for (const supply of supplies) add(supply.name, supplyTerminals(supply));
    for (const [{ name }, { terminals }] of devices) add(name, terminals);
    this.joining = new Joining(count);
    for (const { steps } of paths) {
      for (let at = 1; at < steps.length; at++) {
        const [before, after] = [steps[at - 1]!, steps[at]!];
        const one = this.nodeOf(before.device, before.leave ?? before.enter);
        const other = this.nodeOf(after.device, after.enter);
        // A terminal that the device hasn't got joins nothing: such a circuit isn't sound, and is still told from others.
        if (one >= 0 && other >= 0) this.joining.join(one, other);
      }
    }
    this.joined = new Int32Array(count);
    for (let at = 0; at < count; at++) this.joined[this.joining.find(at)]!++;
  }

  /** The conductor at a terminal; -1 for a place inside a device, to which no wire comes. */
  nodeOf(device: string, terminal: string): number {
    const number = this.numberOf(device, terminal);
    return number < 0 ? -1 : this.joining.find(number);
  }

  private numberOf(device: string, terminal: string): number {
    const { from, terminals } = this.parts.get(device)!;
    const at = terminals.indexOf(terminal);
    return at < 0 ? -1 : from + at;
  }

  /** A conductor with one terminal on it joins nothing: whatever ends there is as good as unused. */
  isWired(node: number): boolean {
    return node >= 0 && this.joined[node]! > 1;
  }
}

export function incidenceOf(circuit: Circuit): Incidence {
  const devices = circuit.devices.map((device) => [device, anatomyOf(device)] as const);
  const wiring = new Wiring(circuit, devices);
  const kinds: string[] = [];
  const edges: number[][] = [];
  const vertex = (kind: string): number => {
    kinds.push(kind);
    edges.push([]);
    return kinds.length - 1;
  };
  const link = (one: number, other: number): void => {
    edges[one]!.push(other);
    edges[other]!.push(one);
  };
  const conductors = new Map<number, number>();
  /** Links a part to the conductor at one of its terminals, where there is one. */
  const attach = (part: number, node: number): void => {
    if (!wiring.isWired(node)) return;
    let conductor = conductors.get(node);
    if (conductor === undefined) {
      conductor = vertex('conductor');
      conductors.set(node, conductor);
    }
    link(part, conductor);
  };

  for (const supply of circuit.supplies) {
    const { name, volts, current, earthed } = supply;
    const source = vertex(`supply ${volts} ${current} ${earthed}`);
    for (const terminal of supplyTerminals(supply)) {
      const pole = vertex(`pole ${terminal}`);
      link(source, pole);
      attach(pole, wiring.nodeOf(name, terminal));
    }
  }
  for (const [device, anatomy] of devices) {
    const { name } = device;
    const whole = vertex(kindOf(device, anatomy));
    const commons = new Map<number, number>();
    for (const { from, to, form, closedIn, main, changeover, pole } of anatomy.contacts) {
      const [a, b] = [wiring.nodeOf(name, from), wiring.nodeOf(name, to)];
      if (!wiring.isWired(a) && !wiring.isWired(b)) continue;
      const contact = vertex(`contact ${form} ${closedIn.join('')} ${main} ${changeover}`);
      attach(contact, b);
      if (!changeover) {
        link(contact, whole);
        attach(contact, a);
        continue;
      }
      let common = commons.get(pole);
      if (common === undefined) {
        common = vertex('common');
        commons.set(pole, common);
        link(common, whole);
        attach(common, a);
      }
      link(contact, common);
    }
    for (const { from, to, role } of anatomy.loads) {
      const [a, b] = [wiring.nodeOf(name, from), wiring.nodeOf(name, to)];
      if (!wiring.isWired(a) && !wiring.isWired(b)) continue;
      const load = vertex(role);
      link(load, whole);
      const begins = hasEnds(role) ? vertex('begins') : load;
      if (begins !== load) link(begins, load);
      attach(begins, a);
      attach(load, b);
    }
    if (!leadsThrough(anatomy)) continue;
    for (const terminal of anatomy.terminals) {
      const node = wiring.nodeOf(name, terminal);
      if (!wiring.isWired(node)) continue;
      const through = vertex('through');
      link(through, whole);
      attach(through, node);
    }
  }
  return { kinds, edges };
}
