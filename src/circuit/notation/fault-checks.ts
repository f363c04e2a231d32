/** Whether a circuit can have a fault. */
import type { TerminalRef } from '../../../shared/circuit.ts';
import type { Fault } from '../../../shared/scenario.ts';
import type { CircuitProblemSaid } from '../../words/index.ts';
import { supplyTerminals } from '../anatomy/index.ts';
import { parseTerminalRef } from '../terminal-names.ts';
import type { CircuitView, DeviceView } from '../view.ts';
import { noSuchDevice, noSuchSupply, noSuchTerminal } from './absent.ts';

/** What is wrong with a fault in this circuit; undefined where it can be. `others`: faults that it has already. */
export function faultInCircuit(
  fault: Fault,
  view: CircuitView,
  others: readonly Fault[],
): CircuitProblemSaid | undefined {
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

function absentTerminal(ref: string, view: CircuitView): CircuitProblemSaid | undefined {
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

function unwired(refs: readonly string[], { wired }: CircuitView): CircuitProblemSaid | undefined {
  return refs.some((ref) => wired.has(ref as TerminalRef))
    ? undefined
    : { says: 'fault-not-possible.unwired', terminals: refs };
}

function noWire(
  { from, to }: { from: string; to: string },
  { wires }: CircuitView,
): CircuitProblemSaid | undefined {
  const joins = wires.some((w) => (w.from === from && w.to === to) || (w.from === to && w.to === from));
  if (joins) return undefined;
  const others = wires.flatMap((w) => (w.from === from ? [w.to] : w.to === from ? [w.from] : []));
  return { says: 'fault-not-possible.noWire', from, to, others: [...new Set(others)] };
}

function cannotCross(one: string, other: string, others: readonly Fault[]): CircuitProblemSaid | undefined {
  if (one === other) return { says: 'fault-not-possible.itself' };
  const taken = others.flatMap((fault) => (fault.kind === 'crossed' ? [fault.one, fault.other] : []));
  const again = [one, other].find((ref) => taken.includes(ref));
  return again === undefined ? undefined : { says: 'fault-not-possible.again', at: again };
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

const listed = (name: string, parts: readonly Ends[]): string[] =>
  parts.filter(({ to }) => to !== '*').map(({ from, to }) => `${name}:${from}-${to}`);

function noContact(
  { kind: fault, ...ends }: Ends & { readonly kind: 'welded' | 'dirty' },
  view: CircuitView,
): CircuitProblemSaid | undefined {
  const { found, device: name, one, other } = endsOf(ends, view);
  const { contacts = [], loads = [] } = found?.anatomy ?? {};
  if (contacts.some((contact) => between(contact, one, other))) return undefined;
  if (loads.some((load) => between(load, one, other))) {
    return { says: 'fault-not-possible.isLoad', name, one, other, fault };
  }
  return {
    says: 'fault-not-possible.noContact',
    name,
    one,
    other,
    fault,
    contacts: listed(name, contacts),
  };
}

function noLoad(
  { kind: fault, ...ends }: Ends & { readonly kind: 'open' | 'shorted' },
  view: CircuitView,
): CircuitProblemSaid | undefined {
  const { found, device: name, one, other } = endsOf(ends, view);
  const { contacts = [], loads = [] } = found?.anatomy ?? {};
  if (loads.some((load) => between(load, one, other))) return undefined;
  if (contacts.some((contact) => between(contact, one, other))) {
    return { says: 'fault-not-possible.isContact', name, one, other, fault };
  }
  return { says: 'fault-not-possible.noLoad', name, one, other, fault, loads: listed(name, loads) };
}

function absentPart(
  { kind, device }: { readonly kind: 'blown' | 'stuck'; readonly device: string },
  view: CircuitView,
): CircuitProblemSaid | undefined {
  const found = view.devices.get(device);
  if (!found) return noSuchDevice(view, device);
  const can = ({ anatomy }: DeviceView): boolean =>
    anatomy.mechanisms.some(({ protects }) => kind === 'stuck' || protects);
  if (can(found)) return undefined;
  return {
    says: 'fault-not-possible.part',
    name: device,
    kind: found.device.kind,
    fault: kind,
    can: [...view.devices.values()].filter(can).map((each) => each.device.name),
  };
}
