/**
 * What is written on the drawings of one plant: everything that a family needs words for, in full. `#` stands for a machine's
 * number; of a trio, `@` for the letter of one of the three.
 */
import type { Meaning } from './colours.ts';

export interface Word {
  readonly text: string;
  readonly meaning: Meaning;
}

/** What reports it: a contact of the process, one at the end of a travel, one at a level. */
export type Sensor = 'contact' | 'limit' | 'float';

/** Something that a contact in the field reports of a machine. */
export interface Signal {
  /** The machine that it belongs to. */
  readonly thing: string;
  readonly sensor: Sensor;
  /** Beside the contact, and on the lamp or input point that shows it has acted. */
  readonly acted: Word;
  /** On the lamp that shows it hasn't. */
  readonly rest: Word;
  /** What a broken wire has to read as where the circuit is to fail safe: the worse of the two, or either where none is bad. */
  readonly wireOff: 'acted' | 'rest' | 'either';
}

/** A machine that is started and stopped. */
export interface Drive {
  readonly thing: string;
  /** What it does while it runs: `running`, `cutting`. */
  readonly running: string;
  /** It comes up to speed without its load, as a star-delta start needs. */
  readonly startsUnloaded?: true;
  /** Whoever threads, clears or cleans it moves it a little at a time. */
  readonly jogs?: true;
}

/** A machine that moves two ways. */
export interface Movement {
  readonly thing: string;
  readonly ways: readonly [Way, Way];
  /**
   * `travels`: between two limits. `turns`: without an end, so there is no limit for it. `lifts`: it carries a load or people, so it
   * moves only while its button is held, and never without its limits.
   */
  readonly motion: 'travels' | 'turns' | 'lifts';
}

export interface Way {
  /** On the button, beside the contactor and on the lamp while it moves. */
  readonly button: string;
  readonly doing: string;
  /** At its limit, where it has one. */
  readonly there?: string;
}

/** Two machines of which one is on duty. */
export interface Pair {
  readonly thing: string;
  readonly units: readonly [string, string];
  /** What calls for one of them. */
  readonly demand: string;
}

/** A pit that is pumped out between two floats. */
export interface Sump {
  readonly thing: string;
  readonly pump: string;
}

/** A machine that runs only while every one of its conditions holds. */
export interface Chain {
  readonly thing: string;
  readonly may: string;
  readonly mayNot: string;
  readonly conditions: readonly Condition[];
}

export interface Condition {
  /** On the lamp that shows that it holds. */
  readonly text: string;
  /** Beside the contact: what actuates it. */
  readonly actedBy: string;
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
  /** One of the three. */
  readonly one: string;
  /** When two have acted; until then there is none: `No frost trip in bay 2`. */
  readonly trip: Word;
}

/** Something that follows a signal late. */
export interface Delayed {
  readonly thing: string;
  /** Beside the signal's contact. */
  readonly signal: string;
  /** Beside it where it is a break contact: what keeps it open is that there is no signal. */
  readonly without: string;
  /** What starts late (on-delay) or lasts on (off-delay), and what is shown otherwise. */
  readonly late: Word;
  readonly idle: string;
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
