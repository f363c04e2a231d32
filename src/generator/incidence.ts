/**
 * A circuit as a graph of coloured vertices in which only structure is left: no designation, no text, no order of paths
 * or poles. Conductors, devices, contacts and loads are vertices; the two ends of a plain contact or load are alike.
 */
import type { Circuit, Device } from '../../shared/circuit.ts';
import { anatomyOf } from '../circuit/index.ts';
import { planOf } from '../solver/index.ts';

export interface Incidence {
  /** What each vertex is, in words that are the same in every circuit. */
  readonly kinds: readonly string[];
  /** Neighbours of each vertex, twice where two edges join the same two. */
  readonly edges: readonly (readonly number[])[];
}

const number = (value: number): string => String(Math.round(value * 1e6) / 1e6);

/** What a device is beyond its name and texts. Its contacts are told by their forms, so that poles may change places. */
function kindOf(device: Device): string {
  const { contacts, mechanisms, loads } = anatomyOf(device);
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
  if (device.kind === 'terminals') parts.push(String(device.count));
  return parts.join('; ');
}

export function incidenceOf(circuit: Circuit): Incidence {
  const plan = planOf(circuit);
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
  // A conductor with one terminal on it joins nothing: whatever ends there is as good as unused.
  const ends = new Int32Array(plan.nodes);
  for (const node of plan.nodeOf.values()) ends[node]!++;
  const conductors = new Int32Array(plan.nodes).fill(-1);
  const conductor = (node: number): number => {
    if (conductors[node]! < 0) conductors[node] = vertex('conductor');
    return conductors[node]!;
  };
  const wired = (node: number): boolean => ends[node]! > 1;
  const attach = (part: number, node: number): void => {
    if (wired(node)) link(part, conductor(node));
  };

  for (const { supply, poles } of plan.supplies) {
    const { volts, current, earthed } = supply;
    const source = vertex(`supply ${volts} ${current} ${earthed}`);
    for (const { terminal, node } of poles) {
      const pole = vertex(`pole ${terminal}`);
      link(source, pole);
      attach(pole, node);
    }
  }
  const devices = new Map(circuit.devices.map((device) => [device.name, vertex(kindOf(device))]));
  const poles = new Map<string, number>();
  for (const { device, a, b, form, closedIn, main, changeover, pole } of plan.switches) {
    if (!wired(a) && !wired(b)) continue;
    const contact = vertex(`contact ${form} ${closedIn.join('')} ${main} ${changeover}`);
    attach(contact, b);
    if (!changeover) {
      link(contact, devices.get(device)!);
      attach(contact, a);
      continue;
    }
    const key = `${device} ${pole}`;
    let common = poles.get(key);
    if (common === undefined) {
      common = vertex('common');
      poles.set(key, common);
      link(common, devices.get(device)!);
      attach(common, a);
    }
    link(contact, common);
  }
  for (const { device, role, a, b } of plan.loads) {
    if (!wired(a) && !wired(b)) continue;
    const load = vertex(role);
    link(load, devices.get(device)!);
    // Inputs and windings have ends that are not alike.
    const begins = role === 'input' || role === 'motor' ? vertex('begins') : load;
    if (begins !== load) link(begins, load);
    attach(begins, a);
    attach(load, b);
  }
  for (const { name, kind } of circuit.devices) {
    if (kind !== 'terminals') continue;
    for (const [terminal, node] of plan.nodeOf) {
      if (!terminal.startsWith(`${name}:`) || !wired(node)) continue;
      const through = vertex('through');
      link(through, devices.get(name)!);
      attach(through, node);
    }
  }
  return { kinds, edges };
}
