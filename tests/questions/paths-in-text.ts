/** Paths as they stand in the sentences of an explanation, taken apart again and held against the solver's state. */

import type { Circuit } from '../../shared/circuit.ts';
import { anatomyOf, deviceOf, parseTerminalList } from '../../src/circuit/index.ts';
import { isClosed, type Machine, type State } from '../../src/solver/index.ts';

/** `A:L, -F1:1-2, coil A1-A2, A:N`: from pole to pole, or from a pole to a terminal. */
const PATH =
  /[A-Z]:[A-Z0-9]+[+-]?(?:, (?:-[A-Z]+[0-9]+:[A-Z0-9*]+(?:-[A-Z0-9*]+)?|coil [A-Z0-9]+-[A-Z0-9]+))+(?:, [A-Z]:[A-Z0-9]+[+-]?)/g;
const OPEN = /(-[A-Z]+[0-9]+):([A-Z0-9]+)-([A-Z0-9]+) is open/g;

export interface ToldPath {
  readonly stops: readonly { readonly from: string; readonly to: string }[];
}

/** Every path in a text; `coil A1-A2` is a coil of the device that the sentence begins with. */
export function pathsIn(text: string): ToldPath[] {
  const subject = /-[A-Z]+[0-9]+/.exec(text)?.[0] ?? '';
  return (text.match(PATH) ?? []).map((path) => ({
    stops: path.split(', ').map((part) => {
      const [device = '', terminals = ''] = part.startsWith('coil ')
        ? [subject, part.slice(5)]
        : part.split(/:(.*)/);
      const [from = '', to = from] =
        terminals === '*' ? ['*'] : (parseTerminalList(terminals) ?? terminals.split('-'));
      return { from: `${device}:${from}`, to: `${device}:${to}` };
    }),
  }));
}

export const openIn = (text: string): { device: string; from: string; to: string }[] =>
  [...text.matchAll(OPEN)].map(([, device = '', from = '', to = '']) => ({ device, from, to }));

const contactIndex = ({ plan }: Machine, from: string, to: string): number =>
  plan.switches.findIndex(
    (part) =>
      (`${part.device}:${part.from}` === from && `${part.device}:${part.to}` === to) ||
      (`${part.device}:${part.from}` === to && `${part.device}:${part.to}` === from),
  );

/** What keeps a told path from being one: stops that no conductor joins, contacts that are open. */
export function faultsOf({ stops }: ToldPath, circuit: Circuit, machine: Machine, state: State): string[] {
  const faults: string[] = [];
  stops.forEach(({ from, to }, index) => {
    const next = stops[index + 1];
    if (next && machine.plan.nodeOf.get(to) !== machine.plan.nodeOf.get(next.from))
      faults.push(`${to} and ${next.from} are not one conductor`);
    if (from === to) return;
    const device = deviceOf(circuit, from.split(':')[0]!);
    const load =
      device &&
      anatomyOf(device).loads.some((each) => from.endsWith(`:${each.from}`) || to.endsWith(`:${each.from}`));
    const contact = contactIndex(machine, from, to);
    if (contact < 0 && !load) faults.push(`nothing lies between ${from} and ${to}`);
    if (contact >= 0 && !isClosed(machine, state.at, contact)) faults.push(`${from} to ${to} is open`);
  });
  return faults;
}

export const isOpen = (machine: Machine, state: State, device: string, from: string, to: string): boolean => {
  const contact = contactIndex(machine, `${device}:${from}`, `${device}:${to}`);
  return contact >= 0 && !isClosed(machine, state.at, contact);
};
