/** What is written on the drawings of one plant: everything that a family needs words for. `#` stands for a machine's number. */
import type { Meaning } from './colours.ts';

export interface Word {
  readonly text: string;
  readonly meaning: Meaning;
}

/** What reports it: a contact of the process, one at the end of a travel, one at a level. */
export type Sensor = 'contact' | 'limit' | 'float';

/** Something that a contact in the field reports of a machine. */
export interface Signal {
  readonly thing: string;
  readonly sensor: Sensor;
  /** Beside the contact, and on the lamp or input point that shows it has acted. */
  readonly acted: Word;
  /** On the lamp that shows it hasn't. */
  readonly rest: Word;
}

/** A machine that is started and stopped. */
export interface Drive {
  readonly thing: string;
  /** What it does while it runs: `running`, `cutting`. */
  readonly running: string;
  /** It comes up to speed without its load, as a star-delta start needs. */
  readonly startsUnloaded?: true;
}

/** A machine that moves two ways between two limits. */
export interface Movement {
  readonly thing: string;
  /** What the button says, what the machine does, and where its limit is. */
  readonly ways: readonly [Way, Way];
}

export interface Way {
  readonly button: string;
  readonly doing: string;
  readonly there: string;
}

/** Two machines of which one is on duty. */
export interface Pair {
  readonly thing: string;
  readonly units: readonly [string, string];
}

/** A pit that is pumped out between two floats. */
export interface Sump {
  readonly thing: string;
  readonly pump: string;
}

/** A machine that runs only while every one of its conditions holds. */
export interface Chain {
  readonly thing: string;
  /** On the lamps, where `may run` and `kept off` aren't what is said of it. */
  readonly may?: string;
  readonly kept?: string;
  readonly conditions: readonly Condition[];
}

export interface Condition {
  readonly text: string;
  readonly sensor: Sensor;
  /** The contact stands at rest (break) or has acted (make) when all is well. */
  readonly well: 'rest' | 'acted';
  /** May be passed over while the machine is set up: nobody is hurt and nothing is let go by it. */
  readonly passable: boolean;
}

/** One quantity watched by three sensors. */
export interface Trio {
  readonly thing: string;
  readonly sensor: Sensor;
  readonly acted: Word;
}

/** Something that follows a signal late. */
export interface Delayed {
  readonly thing: string;
  /** Beside the signal's contact. */
  readonly signal: string;
  /** Beside it where it is a break contact: what keeps it open is that there is no signal. */
  readonly without: string;
  /** What starts late (on-delay) or lasts on (off-delay), in full. */
  readonly late: Word;
}

export interface Plant {
  readonly id: string;
  /** As the title of a drawing begins. */
  readonly name: string;
  readonly signals: readonly Signal[];
  readonly drives: readonly Drive[];
  /** Machines that catch hands: presses, clamps, guillotines. */
  readonly twoHand: readonly Drive[];
  readonly movements: readonly Movement[];
  readonly pairs: readonly Pair[];
  readonly sumps: readonly Sump[];
  readonly chains: readonly Chain[];
  readonly trios: readonly Trio[];
  readonly startsLate: readonly Delayed[];
  readonly runsOn: readonly Delayed[];
}
