/** What is done to a circuit, what is wrong with it, and the things in it, as parts of sentences. */
import type { StatementOf } from '../statement.ts';

/** A device or an output's point with the text it carries: `-S1 ("Start")`, or the designation alone. */
export interface Named {
  readonly name: string;
  readonly text?: string;
}

export interface NamedSupply {
  readonly name: string;
  /** `24`, `AC`; absent where the circuit has no such supply. */
  readonly volts?: number;
  readonly current?: string;
}

/** The two ends of a contact, a coil or a load, both of one device. */
export interface Ends {
  readonly from: string;
  readonly to: string;
}

const named = ({ name, text }: Named): string => (text ? `${name} ("${text}")` : name);
const supplyNamed = ({ name, volts, current }: NamedSupply): string =>
  volts === undefined ? `supply ${name}` : `supply ${name} (${volts} V ${current})`;
/** `-K3:11-14`. */
const ends = ({ from, to }: Ends): string => `${from}-${to.slice(to.indexOf(':') + 1)}`;

/** Seconds as they are read: `500 ms`, `5 s`, `2 min`. */
export function time(seconds: number): string {
  if (seconds < 1) return `${Number((seconds * 1000).toPrecision(12))} ms`;
  return seconds >= 60 && Number.isInteger(seconds / 60) ? `${seconds / 60} min` : `${seconds} s`;
}

interface OnDevice {
  readonly device: Named;
}

/** Acts as instructions, `press -S1 ("Start")`; what the plant does, as what happens: `-B1 ("Bin full") is actuated`. */
export const acts = {
  press: ({ device }: OnDevice): string => `press ${named(device)}`,
  /** What would come back by itself stays pressed until it is released. */
  pressAndKeep: ({ device }: OnDevice): string => `press ${named(device)} and keep it pressed`,
  release: ({ device }: OnDevice): string => `release ${named(device)}`,
  /** Of an emergency stop, which stays in. */
  unlatch: ({ device }: OnDevice): string => `unlatch ${named(device)}`,
  turn: ({ device, to }: OnDevice & { to: string }): string => `turn ${named(device)} to ${to}`,
  actuate: ({ device }: OnDevice): string => `${named(device)} is actuated`,
  goBack: ({ device }: OnDevice): string => `${named(device)} is no longer actuated`,
  open: ({ device }: OnDevice): string => `open ${named(device)}`,
  close: ({ device }: OnDevice): string => `close ${named(device)}`,
  takeOut: ({ device }: OnDevice): string => `take out the fuse ${named(device)}`,
  putBack: ({ device }: OnDevice): string => `put the fuse ${named(device)} back`,
  trip: ({ device }: OnDevice): string => `trip ${named(device)}`,
  reset: ({ device }: OnDevice): string => `reset ${named(device)}`,
  on: ({ output }: { output: Named }): string => `switch the output ${named(output)} on`,
  off: ({ output }: { output: Named }): string => `switch the output ${named(output)} off`,
  hold: ({ device }: OnDevice): string => `hold ${named(device)} in by hand`,
  free: ({ device }: OnDevice): string => `let go of ${named(device)}`,
  fail: ({ supply }: { supply: NamedSupply }): string => `let ${supplyNamed(supply)} fail`,
  restore: ({ supply }: { supply: NamedSupply }): string => `restore ${supplyNamed(supply)}`,
  wait: ({ seconds }: { seconds: number }): string => `wait ${time(seconds)}`,
};
export type ActSaid = StatementOf<typeof acts>;

/** Faults as statements: `the conductor at -K3:14 is off`. */
export const faults = {
  loose: ({ at }: { at: string }): string => `the conductor at ${at} is off`,
  cut: ({ from, to }: Ends): string => `the wire between ${from} and ${to} is broken`,
  crossed: ({ one, other }: { one: string; other: string }): string =>
    `the conductors on ${one} and ${other} are exchanged`,
  welded: (contact: Ends): string => `the contact ${ends(contact)} is welded`,
  dirty: ({ ohms, ...contact }: Ends & { ohms: number }): string =>
    `the contact ${ends(contact)} is dirty (${ohms} ohm)`,
  open: (part: Ends): string => `${ends(part)} is open inside`,
  shorted: (part: Ends): string => `${ends(part)} is shorted`,
  blown: ({ device }: OnDevice): string => `${named(device)} has blown`,
  tripped: ({ device }: OnDevice): string => `${named(device)} has tripped`,
  stuck: ({ device }: OnDevice): string => `${named(device)} is stuck at rest`,
};
export type FaultSaid = StatementOf<typeof faults>;
