/** Loads and changeover poles of a circuit with their terminals in full. */
import type { TerminalRef } from '../../../shared/circuit.ts';
import type { LoadNamed } from '../../words/index.ts';
import type { Contact, Load } from '../anatomy/index.ts';
import { terminalRefOf } from '../terminal-names.ts';
import type { CircuitView, DeviceView } from '../view.ts';

export interface PlacedLoad {
  readonly part: DeviceView;
  readonly load: Load;
  readonly from: TerminalRef;
  readonly to: TerminalRef;
  readonly named: LoadNamed;
}

/** A motor's inner star point is no terminal that can be wired. */
export const isInner = (terminal: string): boolean => terminal === '*';

export function loadsOf({ devices }: CircuitView): PlacedLoad[] {
  return [...devices.values()].flatMap((part) =>
    part.anatomy.loads.map((load) => {
      const { name } = part.device;
      const ends = isInner(load.to) ? load.from : `${load.from}-${load.to}`;
      return {
        part,
        load,
        from: terminalRefOf(name, load.from),
        to: terminalRefOf(name, load.to),
        named: { role: load.role, at: `${name}:${ends}` },
      };
    }),
  );
}

export interface Changeover {
  readonly part: DeviceView;
  readonly common: string;
  readonly breakLeg: string;
  readonly makeLeg: string;
}

export function changeoversOf({ devices }: CircuitView): Changeover[] {
  return [...devices.values()].flatMap((part) => {
    const poles = new Map<number, Contact[]>();
    for (const contact of part.anatomy.contacts) {
      if (!contact.changeover) continue;
      const legs = poles.get(contact.pole) ?? [];
      poles.set(contact.pole, [...legs, contact]);
    }
    return [...poles.values()].map((legs) => ({
      part,
      common: legs[0]!.from,
      breakLeg: legs.find(({ form }) => form === 'break')!.to,
      makeLeg: legs.find(({ form }) => form === 'make')!.to,
    }));
  });
}
