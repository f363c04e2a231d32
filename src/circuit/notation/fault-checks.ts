/** Whether a circuit can have a fault. */
import type { TerminalRef } from '../../../shared/circuit.ts';
import type { Fault } from '../../../shared/scenario.ts';
import { supplyTerminals } from '../anatomy/index.ts';
import { parseTerminalRef } from '../terminal-names.ts';
import type { CircuitView, DeviceView } from '../view.ts';
import { article, someOf } from '../wording.ts';
import { noSuchDevice, noSuchSupply, noSuchTerminal, type Worded } from './absent.ts';

const impossible = (message: string, hint: string): Worded => ({ code: 'fault-not-possible', message, hint });

/** What is wrong with a fault in this circuit; undefined where it can be. `others`: faults that it has already. */
export function faultInCircuit(
  fault: Fault,
  view: CircuitView,
  others: readonly Fault[],
): Worded | undefined {
  switch (fault.kind) {
    case 'loose':
      return absentTerminal(fault.at, view) ?? unwired([fault.at], view);
    case 'cut':
      return absentTerminal(fault.from, view) ?? absentTerminal(fault.to, view) ?? noWire(fault, view);
    case 'crossed':
      return (
        absentTerminal(fault.one, view) ??
        absentTerminal(fault.other, view) ??
        cannotCross(fault.one, fault.other, others) ??
        unwired([fault.one, fault.other], view)
      );
    case 'welded':
    case 'dirty':
      return absentTerminal(fault.from, view) ?? absentTerminal(fault.to, view) ?? noContact(fault, view);
    case 'open':
    case 'shorted':
      return absentTerminal(fault.from, view) ?? absentTerminal(fault.to, view) ?? noLoad(fault, view);
    case 'blown':
    case 'stuck':
      return absentPart(fault, view);
  }
}

function absentTerminal(ref: string, view: CircuitView): Worded | undefined {
  const { device, terminal } = parseTerminalRef(ref)!;
  if (!device.startsWith('-')) {
    const supply = view.supplies.get(device);
    if (!supply) return noSuchSupply(view, device);
    const terminals = supplyTerminals(supply);
    return terminals.includes(terminal) ? undefined : noSuchTerminal(device, terminal, terminals);
  }
  const found = view.devices.get(device);
  if (!found) return noSuchDevice(view, device);
  const { terminals } = found.anatomy;
  return terminals.includes(terminal) ? undefined : noSuchTerminal(device, terminal, terminals);
}

function unwired(refs: readonly string[], { wired }: CircuitView): Worded | undefined {
  return refs.some((ref) => wired.has(ref as TerminalRef))
    ? undefined
    : impossible(`No conductor comes to ${refs.join(' or ')}.`, 'Name a terminal that a path comes to.');
}

function noWire({ from, to }: { from: string; to: string }, { wires }: CircuitView): Worded | undefined {
  const joins = wires.some((w) => (w.from === from && w.to === to) || (w.from === to && w.to === from));
  if (joins) return undefined;
  const others = wires.flatMap((w) => (w.from === from ? [w.to] : w.to === from ? [w.from] : []));
  return impossible(
    `No wire goes straight from ${from} to ${to}.`,
    others.length > 0
      ? `From ${from} a wire goes to ${someOf([...new Set(others)])}.`
      : `No conductor comes to ${from}: name two neighbours on a path.`,
  );
}

function cannotCross(one: string, other: string, others: readonly Fault[]): Worded | undefined {
  if (one === other) return impossible('A conductor is exchanged with another one.', 'Name two terminals.');
  const taken = others.flatMap((fault) => (fault.kind === 'crossed' ? [fault.one, fault.other] : []));
  const again = [one, other].find((ref) => taken.includes(ref));
  return again === undefined
    ? undefined
    : impossible(`The conductors on ${again} are exchanged already.`, 'Exchange each terminal once.');
}

interface Ends {
  readonly from: string;
  readonly to: string;
}

/** The device and the two terminals of a contact, coil or load, both known to be there. */
function endsOf({ from, to }: Ends, view: CircuitView) {
  const { device, terminal } = parseTerminalRef(from)!;
  return { found: view.devices.get(device), device, one: terminal, other: parseTerminalRef(to)!.terminal };
}

const between = (part: Ends, one: string, other: string): boolean =>
  (part.from === one && part.to === other) || (part.from === other && part.to === one);

const listed = (name: string, parts: readonly Ends[]): string =>
  someOf(parts.filter(({ to }) => to !== '*').map(({ from, to }) => `${name}:${from}-${to}`));

function noContact(fault: Ends & { readonly kind: string }, view: CircuitView): Worded | undefined {
  const { found, device, one, other } = endsOf(fault, view);
  const { contacts = [], loads = [] } = found?.anatomy ?? {};
  if (contacts.some((contact) => between(contact, one, other))) return undefined;
  return impossible(
    `${device} has no contact between ${one} and ${other} that could be ${fault.kind}.`,
    loads.some((load) => between(load, one, other))
      ? 'A coil or load can be open or shorted.'
      : `Its contacts are ${listed(device, contacts) || 'none'}.`,
  );
}

function noLoad(fault: Ends & { readonly kind: string }, view: CircuitView): Worded | undefined {
  const { found, device, one, other } = endsOf(fault, view);
  const { contacts = [], loads = [] } = found?.anatomy ?? {};
  if (loads.some((load) => between(load, one, other))) return undefined;
  return impossible(
    `${device} has no coil or load between ${one} and ${other} that could be ${fault.kind}.`,
    contacts.some((contact) => between(contact, one, other))
      ? 'A contact can be welded or dirty.'
      : `Its coils and loads are ${listed(device, loads) || 'none that can be named'}.`,
  );
}

function absentPart(
  { kind, device }: { readonly kind: 'blown' | 'stuck'; readonly device: string },
  view: CircuitView,
): Worded | undefined {
  const found = view.devices.get(device);
  if (!found) return noSuchDevice(view, device);
  const { mechanisms } = found.anatomy;
  if (mechanisms.some(({ protects }) => kind === 'stuck' || protects)) return undefined;
  return impossible(
    `${device} can't be ${kind}: it is ${article(found.device.kind)}.`,
    kind === 'blown'
      ? `Fuses and breakers can: ${named(view, ({ anatomy }) => anatomy.mechanisms.some((m) => m.protects))}.`
      : `Devices with moving contacts can: ${named(view, ({ anatomy }) => anatomy.mechanisms.length > 0)}.`,
  );
}

const named = ({ devices }: CircuitView, which: (each: DeviceView) => boolean): string =>
  someOf([...devices.values()].filter(which).map(({ device }) => device.name)) || 'this circuit has none';
