/** The circuit with every contact taken as able to close, and its loads taken out. */
import type { TerminalRef } from '../../../shared/circuit.ts';
import { type Contact, supplyTerminals } from '../anatomy/index.ts';
import { terminalRefOf } from '../terminal-names.ts';
import type { CircuitView, DeviceView } from '../view.ts';

/** A contact between two conductors. */
export interface Link {
  readonly part: DeviceView;
  readonly contact: Contact;
  readonly from: TerminalRef;
  readonly to: TerminalRef;
}

/** A pole of a supply. */
export interface Pole {
  readonly supply: string;
  readonly terminal: string;
  readonly ref: TerminalRef;
  /** The return, N or L-. */
  readonly isReturn: boolean;
}

export function polesOf({ circuit }: CircuitView): Pole[] {
  return circuit.supplies.flatMap((supply) => {
    const terminals = supplyTerminals(supply);
    return terminals.map((terminal) => ({
      supply: supply.name,
      terminal,
      ref: terminalRefOf(supply.name, terminal),
      isReturn: terminal === terminals.at(-1),
    }));
  });
}

export const linksOf = ({ devices }: CircuitView): Link[] =>
  [...devices.values()].flatMap((part) =>
    part.anatomy.contacts.map((contact) => ({
      part,
      contact,
      from: terminalRefOf(part.device.name, contact.from),
      to: terminalRefOf(part.device.name, contact.to),
    })),
  );

/** Fuses, breakers, isolators, and contacts that never open (an overload's main poles): they may stand on either side. */
export function isExempt({ part, contact }: Link): boolean {
  const mechanism = part.anatomy.mechanisms[contact.mechanism];
  return (
    mechanism !== undefined &&
    (mechanism.drive === 'feed' || contact.closedIn.length === mechanism.positions.length)
  );
}

/** For each conductor the contacts at it, with the conductor on their other side. */
export type Neighbours = ReadonlyMap<number, readonly { readonly to: number; readonly link: Link }[]>;

export function neighboursOf({ conductors: { of } }: CircuitView, links: readonly Link[]): Neighbours {
  const neighbours = new Map<number, { to: number; link: Link }[]>();
  const add = (from: number, to: number, link: Link) => {
    const list = neighbours.get(from);
    if (list) list.push({ to, link });
    else neighbours.set(from, [{ to, link }]);
  };
  for (const link of links) {
    const a = of.get(link.from);
    const b = of.get(link.to);
    // A contact that was given too few terminals leads nowhere.
    if (a === undefined || b === undefined) continue;
    add(a, b, link);
    add(b, a, link);
  }
  return neighbours;
}

/** Conductors reached from `start`, nearest first, each with the contact that leads back towards it. */
export function reach(
  start: number,
  neighbours: Neighbours,
): Map<number, { from: number; link: Link } | undefined> {
  const reached = new Map<number, { from: number; link: Link } | undefined>([[start, undefined]]);
  for (const at of reached.keys()) {
    for (const { to, link } of neighbours.get(at) ?? []) {
      if (!reached.has(to)) reached.set(to, { from: at, link });
    }
  }
  return reached;
}

/** The contacts from a reached conductor back to the start. */
export function wayBack(
  at: number,
  reached: ReadonlyMap<number, { from: number; link: Link } | undefined>,
): Link[] {
  const links: Link[] = [];
  for (let step = reached.get(at); step !== undefined; step = reached.get(step.from)) links.push(step.link);
  return links;
}

export const linkText = ({ part, contact }: Link): string =>
  `${part.device.name}:${contact.from}-${contact.to}`;
