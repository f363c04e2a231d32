/**
 * A circuit as bare wiring: what is joined, what resists and what drives, for a given standing of its mechanisms and
 * with its faults. Written for the tests, apart from the project's own way from a circuit to a network, so that the
 * two can be held against each other. Device by device on purpose.
 */
import type { Circuit, ContactSpec, Device } from '../../shared/circuit.ts';
import type { Fault } from '../../shared/scenario.ts';
import { INPUT_BANDS, TYPICAL_WATTS } from '../../src/circuit/standards.ts';

/** For each mechanism the positions it is in: one, or the two it travels between. Absent: position 0. */
export type Standing = ReadonlyMap<string, readonly number[]>;

export interface Resistor {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly ohms: number;
}

export interface Source {
  readonly supply: string;
  readonly plus: string;
  readonly minus: string;
  /** Direct volts, or the r.m.s. phasor of alternating ones. */
  readonly direct: number;
  readonly re: number;
  readonly im: number;
}

export interface Wiring {
  readonly terminals: readonly string[];
  readonly joined: readonly (readonly [string, string])[];
  readonly resistors: readonly Resistor[];
  readonly sources: readonly Source[];
  /** Returns of earthed supplies. */
  readonly earths: readonly string[];
}

interface Contact {
  readonly mechanism: string;
  readonly from: string;
  readonly to: string;
  readonly closedIn: readonly number[];
  readonly pole: string;
  readonly makes: boolean;
}

interface Load {
  readonly from: string;
  readonly to: string;
  readonly ohms: number;
}

/** A make is closed in `on`, a break in the other positions, a changeover has one of each. */
function contactsOf(
  name: string,
  spec: ContactSpec,
  pole: string,
  positions: readonly string[] = ['rest', 'moved'],
): Contact[] {
  const on = spec.positions
    ? spec.positions.map((position) => positions.indexOf(position))
    : positions.map((_, index) => index).filter((index) => index > 0);
  const off = positions.map((_, index) => index).filter((index) => !on.includes(index));
  const [one = '', two = '', three = ''] = spec.terminals;
  const contact = (to: string, makes: boolean): Contact => ({
    mechanism: name,
    from: `${name}:${one}`,
    to: `${name}:${to}`,
    closedIn: makes ? on : off,
    pole: `${name} ${pole}`,
    makes,
  });
  if (spec.form === 'make') return [contact(two, true)];
  if (spec.form === 'break') return [contact(two, false)];
  return [contact(two, false), contact(three, true)];
}

const numbers = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1);

const changeovers = (name: string, poles: number, digits: string): Contact[] =>
  numbers(poles).flatMap((pole) =>
    contactsOf(
      name,
      { form: 'changeover', terminals: [...digits].map((digit) => `${pole}${digit}`) },
      String(pole),
    ),
  );

const mains = (name: string, poles: number, closedIn: readonly number[]): Contact[] =>
  numbers(poles).map((pole) => ({
    mechanism: name,
    from: `${name}:${2 * pole - 1}`,
    to: `${name}:${2 * pole}`,
    closedIn,
    pole: `${name} main ${pole}`,
    makes: closedIn.includes(1),
  }));

export function contactsOfDevice(device: Device): Contact[] {
  const { name } = device;
  switch (device.kind) {
    case 'relay':
    case 'latching-relay':
      return changeovers(name, device.poles, '124');
    case 'on-delay':
    case 'off-delay':
    case 'supplied-off-delay':
    case 'flasher':
      return changeovers(name, device.poles, '568');
    case 'contactor':
      return [
        ...mains(name, device.mains, [1]),
        ...device.contacts.flatMap((spec, index) => contactsOf(name, spec, String(index))),
      ];
    case 'push-button':
    case 'emergency-stop':
    case 'field-contact':
    case 'limit-switch':
    case 'float-switch':
      return device.contacts.flatMap((spec, index) => contactsOf(name, spec, String(index)));
    case 'selector':
      return device.contacts.flatMap((spec, index) =>
        contactsOf(name, spec, String(index), device.positions),
      );
    case 'overload':
      return [
        ...mains(name, 3, [0, 1]),
        ...contactsOf(name, { form: 'break', terminals: ['95', '96'] }, 'b'),
        ...contactsOf(name, { form: 'make', terminals: ['97', '98'] }, 'm'),
      ];
    case 'fuse':
      return mains(name, device.poles, [0]);
    case 'breaker':
    case 'isolator':
      return mains(name, device.poles, [1]);
    case 'outputs':
      return numbers(device.count).map((point) => ({
        mechanism: `${name}:Q${point}`,
        from: `${name}:COM`,
        to: `${name}:Q${point}`,
        closedIn: [1],
        pole: `${name} ${point}`,
        makes: true,
      }));
    case 'lamp':
    case 'sounder':
    case 'valve':
    case 'motor':
    case 'inputs':
    case 'terminals':
      return [];
  }
}

function loadsOfDevice(device: Device): Load[] {
  const { name } = device;
  const load = (from: string, to: string, ohms: number): Load => ({
    from: `${name}:${from}`,
    to: `${name}:${to}`,
    ohms,
  });
  switch (device.kind) {
    case 'relay':
      return [load('A1', 'A2', device.rating.volts ** 2 / TYPICAL_WATTS.relay)];
    case 'latching-relay': {
      const ohms = device.rating.volts ** 2 / TYPICAL_WATTS.relay;
      return [load('A1', 'A2', ohms), load('B1', 'B2', ohms)];
    }
    case 'contactor':
      return [load('A1', 'A2', device.rating.volts ** 2 / TYPICAL_WATTS.contactor)];
    case 'supplied-off-delay': {
      const ohms = device.rating.volts ** 2 / TYPICAL_WATTS.timer;
      return [load('B1', 'A2', ohms), load('A1', 'A2', ohms)];
    }
    case 'on-delay':
    case 'off-delay':
    case 'flasher':
      return [load('A1', 'A2', device.rating.volts ** 2 / TYPICAL_WATTS.timer)];
    case 'lamp':
    case 'sounder':
      return [load('X1', 'X2', device.rating.volts ** 2 / (device.watts ?? TYPICAL_WATTS[device.kind]))];
    case 'valve':
      return [load('A1', 'A2', device.rating.volts ** 2 / (device.watts ?? TYPICAL_WATTS.valve))];
    case 'motor': {
      // Three windings share the power.
      const ohms = (3 * device.volts ** 2) / TYPICAL_WATTS.motor;
      return ['U', 'V', 'W'].map((at) => load(`${at}1`, device.terminals === 6 ? `${at}2` : '*', ohms));
    }
    case 'inputs':
      return numbers(device.count).map((point) => load(`I${point}`, 'COM', INPUT_BANDS[device.type].ohms));
    default:
      return [];
  }
}

const same = (fault: { from: string; to: string }, from: string, to: string): boolean =>
  (fault.from === from && fault.to === to) || (fault.from === to && fault.to === from);

/** Whether a contact conducts, welds considered: a weld keeps the other leg of its changeover open. */
function conducts(
  contact: Contact,
  device: Device,
  contacts: readonly Contact[],
  faults: readonly Fault[],
  at: readonly number[],
): boolean {
  const welded = (other: Contact): boolean =>
    faults.some((fault) => fault.kind === 'welded' && same(fault, other.from, other.to));
  if (welded(contact)) return true;
  for (const other of contacts) {
    if (other.makes === contact.makes || !welded(other)) continue;
    // Other leg of the same changeover; in a contactor, mirror contacts: a welded make keeps every break open.
    if (other.pole === contact.pole || (device.kind === 'contactor' && other.makes)) return false;
  }
  return at.every((position) => contact.closedIn.includes(position));
}

/** `failed`: supplies that give nothing; an earthed one's return stays bonded. */
export function wiringOf(
  circuit: Circuit,
  faults: readonly Fault[],
  standing: Standing,
  failed: readonly string[] = [],
): Wiring {
  const terminals = new Set<string>();
  const joined: [string, string][] = [];
  const resistors: Resistor[] = [];
  for (const device of circuit.devices) {
    const contacts = contactsOfDevice(device);
    for (const contact of contacts) {
      terminals.add(contact.from).add(contact.to);
      if (!conducts(contact, device, contacts, faults, standing.get(contact.mechanism) ?? [0])) continue;
      const dirt = faults.find((fault) => fault.kind === 'dirty' && same(fault, contact.from, contact.to));
      if (dirt?.kind === 'dirty')
        resistors.push({ name: `dirt ${contact.from}`, from: contact.from, to: contact.to, ohms: dirt.ohms });
      else joined.push([contact.from, contact.to]);
    }
    for (const { from, to, ohms } of loadsOfDevice(device)) {
      terminals.add(from).add(to);
      if (faults.some((fault) => fault.kind === 'shorted' && same(fault, from, to))) joined.push([from, to]);
      if (!faults.some((fault) => fault.kind === 'open' && same(fault, from, to)))
        resistors.push({ name: `${from}-${to}`, from, to, ohms });
    }
    if (device.kind === 'terminals')
      for (const number of numbers(device.count)) terminals.add(`${device.name}:${number}`);
  }
  const sources: Source[] = [];
  const earths: string[] = [];
  for (const { name, volts, current, earthed } of circuit.supplies) {
    const [minus = '', poles] =
      current === 'DC'
        ? [`${name}:L-`, [`${name}:L+`]]
        : current === 'AC'
          ? [`${name}:N`, [`${name}:L`]]
          : [`${name}:N`, [`${name}:L1`, `${name}:L2`, `${name}:L3`]];
    terminals.add(minus);
    poles.forEach((plus, index) => {
      terminals.add(plus);
      const size = current === '3AC' ? volts / Math.sqrt(3) : volts;
      // L2 lags L1 by a third of a turn, L3 lags L2.
      const turn = (-2 * Math.PI * index) / 3;
      if (failed.includes(name)) return;
      const direct = current === 'DC' ? size : 0;
      const [re, im] = current === 'DC' ? [0, 0] : [size * Math.cos(turn), size * Math.sin(turn)];
      sources.push({ supply: name, plus, minus, direct, re, im });
    });
    if (earthed) earths.push(minus);
  }
  // The wires, each ending on the conductor side of a terminal: `t~` is what comes to terminal `t` from outside.
  const outside = (terminal: string): string => `${terminal}~`;
  for (const terminal of terminals) {
    if (faults.some((fault) => fault.kind === 'loose' && fault.at === terminal)) continue;
    const swap = faults.find(
      (fault) => fault.kind === 'crossed' && (fault.one === terminal || fault.other === terminal),
    );
    const end = swap?.kind === 'crossed' ? (swap.one === terminal ? swap.other : swap.one) : terminal;
    joined.push([terminal, outside(end)]);
  }
  for (const { steps } of circuit.paths) {
    for (let index = 1; index < steps.length; index++) {
      const before = steps[index - 1]!;
      const after = steps[index]!;
      const from = `${before.device}:${before.leave ?? before.enter}`;
      const to = `${after.device}:${after.enter}`;
      if (faults.some((fault) => fault.kind === 'cut' && same(fault, from, to))) continue;
      joined.push([outside(from), outside(to)]);
    }
  }
  return { terminals: [...terminals], joined, resistors, sources, earths };
}

/** Terminals that are joined without resistance bear the same name. */
export function netsOf({ terminals, joined }: Wiring): (terminal: string) => string {
  const up = new Map<string, string>();
  const find = (terminal: string): string => {
    let at = terminal;
    for (let next = up.get(at); next !== undefined; next = up.get(at)) at = next;
    return at;
  };
  for (const [one, other] of joined) {
    const [a, b] = [find(one), find(other)];
    if (a !== b) up.set(a, b);
  }
  const names = new Map(terminals.map((terminal) => [terminal, find(terminal)]));
  return (terminal) => names.get(terminal) ?? find(terminal);
}
