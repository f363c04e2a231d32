/** What a drawing can break, and why it keeps to it. */
import { type StatementOf, say } from '../../statement.ts';
import { type ActSaid, acts, type FaultSaid, faults } from '../circuit.ts';
import { speech } from '../speech.ts';
import { capital } from '../text.ts';
import { someOf } from './parts.ts';

const LOADS = {
  coil: 'coil',
  set: 'set coil',
  reset: 'reset coil',
  control: 'control input',
  supply: 'supply',
  lamp: 'lamp',
  sounder: 'sounder',
  valve: 'valve',
  motor: 'winding',
  input: 'input',
};

/** A coil or load with its terminals: `-K3:A1-A2`. */
export interface LoadNamed {
  readonly role: keyof typeof LOADS;
  readonly at: string;
}
interface OfLoad {
  readonly load: LoadNamed;
}
const loadNamed = ({ role, at }: LoadNamed): string => `the ${LOADS[role]} ${at}`;
const sentence = ({ load }: OfLoad, rest: string): string => `${capital(loadNamed(load))} ${rest}`;

/** The end digits of contacts (EN 50005). */
const FUNCTIONS = {
  make: '3 and 4 (delayed: 7 and 8)',
  break: '1 and 2 (delayed: 5 and 6)',
  changeover: '1, 2 and 4 (delayed: 5, 6 and 8)',
};

interface Rated {
  readonly volts: number;
  readonly current?: string | undefined;
}
const rated = ({ volts, current }: Rated): string => `${volts} V${current ? ` ${current}` : ''}`;
/** A voltage that was worked out, to three figures. */
const figure = (volts: number): string => `${Number(volts.toPrecision(3))} V`;
const fed = ({ volts, current }: Rated): string => `${figure(volts)} ${current}`;

interface Fed extends OfLoad {
  readonly rated: Rated;
  readonly supply: string;
  readonly gets: Rated;
}
const madeFor = (load: Fed): string =>
  sentence(
    load,
    `is made for ${rated(load.rated)}, and the supply ${load.supply} gives it ${fed(load.gets)}.`,
  );

interface Winding {
  readonly motor: string;
  readonly volts: number;
  readonly supply: string;
  readonly gets: number;
}
const winding = ({ motor, volts, supply, gets }: Winding, joined: 'delta' | 'star'): string =>
  joined === 'delta'
    ? `A winding of ${motor} is made for ${volts} V, and the supply ${supply} gives it ${figure(gets)} in delta.`
    : `A winding of ${motor} is made for ${volts} V, and the supply ${supply} gives it ${figure(gets)} in star.`;

interface Supplies {
  readonly supplies: readonly [string, string];
  readonly poles: readonly [string, string];
}
const apart = ({ supplies: [one, other] }: Supplies): string =>
  `Keep the circuits of ${one} and ${other} apart: give each a pole, terminals and a return of its own.`;

const CLOSED_TOGETHER =
  'Put a load, or a contact that is open then, between the two poles; interlock what must never be closed together.';

const doneIn = (done: readonly ActSaid[]): string => done.map((act) => say(acts, act)).join(', then ');

/** Of two that lock each other out, the one that is operated and the one that should be at rest. */
interface Locked {
  readonly stuck: string;
  readonly free: string;
}
const lockedOut = (stuck: string, free: string): string =>
  `Put a break contact of ${stuck} before every way to the coil of ${free}, and one of ${free} before every way to that of ${stuck}.`;

const throughRelay = (lamp: string, relay: string): string =>
  `Feed ${lamp} through a make contact of ${relay}, so that it goes out with it.`;

export const ruleProblems = {
  'designation-twice': ({ name }: { name: string }) => ({
    wrong: `The designation ${name} is used twice.`,
    right: 'Give every device a designation of its own.',
  }),
  'designation-twice.supply': ({ name }: { name: string }) => ({
    wrong: `There are two supplies ${name}.`,
    right: 'Give every supply a letter of its own.',
  }),
  'terminal-not-there': ({
    name,
    terminal,
    terminals,
  }: {
    name: string;
    terminal: string;
    terminals: readonly string[];
  }) => ({
    wrong: `${name} has no terminal ${terminal}.`,
    right: `Its terminals are ${someOf(terminals, 30)}.`,
  }),
  'terminal-not-there.device': ({ name }: { name: string }) => ({
    wrong: `A path comes to ${name}, and the circuit hasn't got it.`,
    right: `Add ${name} to the circuit, or take it off the path.`,
  }),
  'terminal-number': ({
    form,
    terminals,
    name,
    usual,
  }: {
    form: keyof typeof FUNCTIONS;
    terminals: string;
    name: string;
    usual: string;
  }) => ({
    wrong: `The ${form} contact ${terminals} of ${name} has numbers that EN 50005 doesn't give it.`,
    right: `All begin with the same sequence digit and end with ${FUNCTIONS[form]}: ${usual}.`,
  }),
  /** `bare`: its terminals that nothing comes to. */
  'load-not-connected': ({ name, bare, ...load }: OfLoad & { name: string; bare: readonly string[] }) => ({
    wrong: sentence(load, `is not connected at ${speech.and(bare)}.`),
    right: `Join ${speech.and(bare.map((end) => `${name}:${end}`))} to a conductor: one side leads to each pole of its supply.`,
  }),
  'load-not-connected.bridged': (load: OfLoad) => ({
    wrong: sentence(load, 'has both sides on the same conductor.'),
    right: 'Join its two sides to the two poles of its supply; no current flows between equal voltages.',
  }),
  'common-unused': ({ name, leg, common }: { name: string; leg: string; common: string }) => ({
    wrong: `The leg ${leg} of ${name} is wired and its common ${common} is not.`,
    right: `Bring the conductor to ${name}:${common} and go on from ${leg}: ${name}:${common}-${leg}.`,
  }),
  'only-legs-wired': (pole: { name: string; common: string; breakLeg: string; makeLeg: string }) => ({
    wrong: `Only the two legs ${pole.breakLeg} and ${pole.makeLeg} of ${pole.name} are wired.`,
    right: `Use the common ${pole.common} with one leg: ${pole.common}-${pole.breakLeg} is closed at rest, ${pole.common}-${pole.makeLeg} when operated.`,
  }),
  'supplies-joined': (joined: Supplies) => ({
    wrong: `The supplies ${joined.supplies[0]} and ${joined.supplies[1]} are joined: ${joined.poles[0]} and ${joined.poles[1]} are on one conductor.`,
    right: apart(joined),
  }),
  'supplies-joined.by': ({ contacts, ...joined }: Supplies & { contacts: readonly string[] }) => ({
    wrong: `The supplies ${joined.supplies[0]} and ${joined.supplies[1]} are joined, ${joined.poles[0]} to ${joined.poles[1]}, when ${speech.plural(contacts.length, { one: `${contacts.join(', ')} closes`, other: `${contacts.join(', ')} close` })}.`,
    right: apart(joined),
  }),
  'contact-on-return': ({
    contacts,
    load,
    pole,
  }: OfLoad & { contacts: readonly string[]; pole: string }) => ({
    wrong: speech.plural(contacts.length, {
      one: `${contacts.join(', ')} stands between ${loadNamed(load)} and the return ${pole}.`,
      other: `${contacts.join(', ')} stand between ${loadNamed(load)} and the return ${pole}.`,
    }),
    right: `Put every contact between the switched pole and ${loadNamed(load)}, and join its other side straight to ${pole}.`,
  }),
  'wrong-voltage': (load: Fed) => ({
    wrong: madeFor(load),
    right: `Feed it from a supply of ${rated(load.rated)}, or fit one for ${fed(load.gets)}.`,
  }),
  'wrong-voltage.input': (load: Fed) => ({
    wrong: madeFor(load),
    right: `Feed it from a supply of ${rated(load.rated)}, or choose another type of input.`,
  }),
  'wrong-voltage.apart': ({
    one,
    other,
    ...load
  }: OfLoad & {
    one: readonly string[];
    other: readonly string[];
  }) => ({
    wrong: sentence(
      load,
      `has one side on the supply ${one.join(', ')} and the other on ${other.join(', ')}.`,
    ),
    right: 'Bring both sides to the two poles of one supply: between isolated supplies no current flows.',
  }),
  'wrong-voltage.phases': ({
    motor,
    supply,
    current,
  }: {
    motor: string;
    supply: string;
    current: string;
  }) => ({
    wrong: `The motor ${motor} is made for three phases, and the supply ${supply} is ${current}.`,
    right: 'Feed it from a 3AC supply.',
  }),
  'wrong-voltage.delta': (each: Winding) => ({
    wrong: winding(each, 'delta'),
    right: `Join it in star, or feed it from another supply, or fit a motor with windings for ${figure(each.gets)}.`,
  }),
  'wrong-voltage.star': (each: Winding) => ({
    wrong: winding(each, 'star'),
    right: `Join it in delta, or feed it from another supply, or fit a motor with windings for ${figure(each.gets)}.`,
  }),
  /** A motor that can only be joined as it is. */
  'wrong-voltage.winding': ({ joined, ...each }: Winding & { joined: 'delta' | 'star' }) => ({
    wrong: winding(each, joined),
    right: `Feed it from another supply, or fit a motor with windings for ${figure(each.gets)}.`,
  }),
  'short-circuit': ({ acts: done }: { acts: readonly ActSaid[] }) => ({
    wrong: `There is a short circuit after: ${done.map((act) => say(acts, act)).join(', then ')}.`,
    right: CLOSED_TOGETHER,
  }),
  'short-circuit.atOnce': {
    wrong: 'There is a short circuit as soon as the supply is on.',
    right: CLOSED_TOGETHER,
  },
  'stop-wins': ({ stop, mover, acts: done }: { stop: string; mover: string; acts: readonly ActSaid[] }) => ({
    wrong: `${mover} operates although ${stop}, which stops it otherwise, is actuated, after: ${done.map((act) => say(acts, act)).join(', then ')}.`,
    right: `Put ${stop} before every way that leads to ${mover}, the jog and the seal as well.`,
  }),
  'no-restart': ({ mover, acts: done }: { mover: string; acts: readonly ActSaid[] }) => ({
    wrong: `${mover} starts by itself when the supply returns, after: ${doneIn(done)}.`,
    right: `Let ${mover} hold itself by a contact of its own, so that it is released with its supply and has to be started anew.`,
  }),
  /** `stuck`: the one that is operated whatever its coil has. */
  'locked-both-ways': ({ stuck, free, acts: done }: Locked & { acts: readonly ActSaid[] }) => ({
    wrong: `${free} operates while ${stuck} is held operated, after: ${doneIn(done)}.`,
    right: lockedOut(stuck, free),
  }),
  'locked-both-ways.atOnce': ({ stuck, free }: Locked) => ({
    wrong: `${free} operates as soon as the supply is on, also while ${stuck} is held operated.`,
    right: lockedOut(stuck, free),
  }),
  'fails-safe': ({ lamp, relay, fault }: { lamp: string; relay: string; fault: FaultSaid }) => ({
    wrong: `${lamp} is green and stays lit, as if all were well, when ${say(faults, fault)} and ${relay} can't report anything.`,
    right: throughRelay(lamp, relay),
  }),
  'fails-safe.supply': ({ lamp, relay, supply }: { lamp: string; relay: string; supply: string }) => ({
    wrong: `${lamp} is green and stays lit, as if all were well, when the supply ${supply} of ${relay} is lost.`,
    right: throughRelay(lamp, relay),
  }),
  'fails-safe.reversed': ({
    relay,
    lamp,
    warning,
    act,
  }: {
    relay: string;
    lamp: string;
    warning: string;
    act: ActSaid;
  }) => ({
    wrong: `A broken wire to ${relay} reads as all being well: when it releases, as after ${say(acts, act)}, ${warning} goes out and ${lamp}, which is green, is lit.`,
    right: `Take the other kind of contact to feed ${relay}, so that it is energised while all is well, and exchange its legs.`,
  }),
  'green-means-well': ({ lamp, warning, act }: { lamp: string; warning: string; act: ActSaid }) => ({
    wrong: `${lamp} is green and stays lit beside the warning ${warning}, after: ${say(acts, act)}.`,
    right: `Put the contacts that put ${lamp} out in one series, so that each of them does it alone.`,
  }),
};
export type RuleProblemSaid = StatementOf<typeof ruleProblems>;

/** Why a drawing keeps each rule. */
export const ruleReasons = {
  'designation-twice': 'A reference designation is how a thing is found in the panel: it names one thing.',
  'terminal-not-there': 'A conductor ends at a terminal that somebody can put a screwdriver to.',
  'terminal-number':
    'The second digit of a contact says what it is, so that a drawing can be read without its legend.',
  'load-not-connected':
    'Current flows through a coil or load only if it comes in on one side and goes out on the other.',
  'common-unused':
    'Each leg of a changeover pole makes with the common and with nothing else: without it a leg leads nowhere.',
  'only-legs-wired':
    'With the two legs of a pole wired and its common left off, no current can ever flow: at rest one leg is open, energised the other.',
  'supplies-joined':
    'Supplies that are isolated from each other stay so: joined anywhere, in any position of any contact, the fault of one reaches the other, and electronics sees a control voltage.',
  'contact-on-return':
    'With all contacts on the switched side, an earth fault blows the fuse; on the return side it could bridge a contact and start something.',
  'wrong-voltage':
    'A coil on too little voltage stays at rest; on too much, or on the wrong kind of current, it burns.',
  'short-circuit':
    'Two poles of a supply that are joined without a load blow the fuse, or burn what is nearest where there is none.',
  'stop-wins':
    'Whoever presses a stop must be able to rely on it, whatever else is held: a stop is stronger than every start.',
  'no-restart':
    'After a loss of supply people work at a machine that they take for stopped: what a button started waits for the button again.',
  'locked-both-ways':
    'A contactor that is welded, stuck or slow must keep the other direction out by itself, so each stands in the way of the other.',
  'fails-safe':
    'What is energised while all is well is there to show its own failures too: a wire off, a burnt coil or a lost supply must not read as well.',
  'green-means-well':
    'Who sees a green lamp for several things looks no further: it is lit only while each of them is in order.',
};

/** Where each comes from; `common practice, no source` and `from memory` are said. */
export const ruleSources: Readonly<Record<keyof typeof ruleReasons, string>> = {
  'designation-twice': 'IEC 81346-1 (from memory)',
  'terminal-not-there':
    'EN 50005 (withdrawn; carried on in annexes of IEC 60947-1 and 60947-5-1, from memory)',
  'terminal-number': 'EN 50005 (withdrawn; carried on in annexes of IEC 60947-1 and 60947-5-1, from memory)',
  'load-not-connected': 'common practice, no source',
  'common-unused': 'common practice, no source (terminal functions: EN 50005)',
  'only-legs-wired': 'common practice, no source (terminal functions: EN 50005)',
  'supplies-joined': 'common practice, no source',
  'contact-on-return':
    'IEC 60204-1, 9.4.3 method a; NFPA 79 the same. Protective devices and isolators exempt: common practice, no source',
  'wrong-voltage':
    'IEC 61810-1 and IEC 60947-4-1: coils from 85 % to 110 % of rated voltage (from memory); inputs IEC 61131-2; the same band for other loads: common practice, no source',
  'short-circuit': 'common practice, no source',
  'stop-wins':
    'IEC 60204-1, 9.2: stop functions override the start functions that belong to them (from memory)',
  'no-restart':
    'IEC 60204-1, 7.5: no restart by itself when the supply returns, where that is a hazard (from memory)',
  'locked-both-ways': 'IEC 60204-1, 9.3.4: contactors for opposite motions are interlocked (from memory)',
  'fails-safe':
    'IEC 60204-1, 9.4.1: a failure of the control circuit leads to no hazard (from memory); energised to be well: common practice',
  'green-means-well': 'IEC 60204-1, 10.3.2: green is for the normal condition (from memory)',
};
