/** Why things stand as they stand, sentence by sentence, and what to look at first. */
import { type StatementOf, say } from '../../statement.ts';
import { type AnswerSaid, answers } from '../answers.ts';
import { type ActSaid, acts, time } from '../circuit.ts';
import { speech } from '../speech.ts';
import { capital, lowered } from '../text.ts';
import { type Moment, moment } from './asking.ts';
import { type Hop, hop, type Path, type PlaceSaid, type Places, path, places, placesOpen } from './places.ts';
import { type ReasonSaid, reasons } from './reasons.ts';

const volts = (value: number): string => `${Number(Math.abs(value).toFixed(2))} V`;
const hops = (all: readonly Hop[]): string => speech.and(all.map(hop));
const why = (reason: ReasonSaid): string => say(reasons, reason);
const sentence = (text: string): string => `${capital(text)}.`;

/** `, after 2,` where a sequence asks for several moments; nothing where only the end is asked for. */
const when = (after: number | undefined): string =>
  after === undefined ? '' : after === 0 ? ', at the start,' : `, after ${after},`;

/** A thing asked, and after how many acts where more than the end is asked. */
interface Thing {
  readonly item: string;
  readonly after?: number;
}

/** Contacts of what was moved by hand or by the plant, and of breakers and isolators. */
interface Moves {
  readonly breaks: readonly Hop[];
  readonly makes: readonly Hop[];
  readonly opens: readonly Hop[];
  readonly closes: readonly Hop[];
}

function moves({ breaks, makes, opens, closes }: Moves): string {
  const part = (all: readonly Hop[], one: string, other: string): string[] =>
    all.length === 0 ? [] : [`${hops(all)} ${speech.plural(all.length, { one, other })}`];
  return speech.and([
    ...part(breaks, 'breaks', 'break'),
    ...part(makes, 'makes', 'make'),
    ...part(opens, 'opens', 'open'),
    ...part(closes, 'closes', 'close'),
  ]);
}

function alsoMoves({ breaks, makes }: Pick<Moves, 'breaks' | 'makes'>): string {
  if (breaks.length + makes.length === 0) return '';
  if (makes.length === 0) return `. It breaks ${hops(breaks)}`;
  if (breaks.length === 0) return `. It makes ${hops(makes)}`;
  return `. It breaks ${hops(breaks)} and makes ${hops(makes)}`;
}

const STANDS: Readonly<Partial<Record<AnswerSaid['says'], string>>> = {
  lit: 'is lit',
  dark: 'is dark',
  dim: 'is dim',
  on: 'is on',
  off: 'is off',
  weak: 'has too little voltage',
  '1': 'reads 1',
  '0': 'reads 0',
  undefined: 'reads neither 0 nor 1',
};
const stands = (state: AnswerSaid): string => STANDS[state.says] ?? say(answers, state);

interface RelayMoves extends Pick<Moves, 'breaks' | 'makes'> {
  readonly relay: string;
  readonly atStart: boolean;
  readonly why: ReasonSaid;
}
const relayMoves = (verb: string, { relay, atStart, why: reason, ...moved }: RelayMoves): string =>
  sentence(`${atStart ? 'at the start ' : ''}${relay} ${verb}: ${why(reason)}${alsoMoves(moved)}`);

interface Flashing extends Thing {
  /** Open meanwhile, where it is ever off. */
  readonly gap?: Places;
  /** Times of flashers among what is open then. */
  readonly times: readonly { readonly on: number; readonly off: number }[];
}
const flashing = ({ gap, times }: Flashing): string =>
  `${gap ? `; in between ${placesOpen(gap)}` : ''}${times.map(({ on, off }) => ` (${time(on)} on, ${time(off)} off)`).join('')}`;

interface Terminal {
  readonly terminal: string;
}
interface Joined extends Terminal {
  readonly pole: string;
  readonly hops: readonly Hop[];
}
const joined = ({ terminal, pole, hops: by }: Joined): string =>
  `${terminal} is joined to ${pole} by ${hops(by)}`;

const sayings = {
  act: ({ number, act, ...moved }: Moves & { number: number; act: ActSaid }): string =>
    `${number}. ${capital(say(acts, act))}: ${moves(moved)}.`,
  /** Of which nothing that is drawn follows at once. */
  actAlone: ({ number, act }: { number: number; act: ActSaid }): string =>
    `${number}. ${capital(say(acts, act))}.`,
  actMovesNothing: ({ number, act }: { number: number; act: ActSaid }): string =>
    `${number}. ${capital(say(acts, act))}: nothing moves.`,
  trips: ({ device }: { device: string }): string =>
    sentence(`${device} opens by itself: two poles of its supply are joined without a load`),
  operates: (relay: RelayMoves): string => relayMoves('operates', relay),
  releases: (relay: RelayMoves): string => relayMoves('releases', relay),
  welded: ({ contact }: { contact: Hop }): string => sentence(`${hop(contact)} is welded and stays closed`),
  hasOperated: ({ item, after, why: reason }: Thing & { why: ReasonSaid }): string =>
    sentence(`${item}${when(after)} has operated: ${why(reason)}`),
  isAtRest: ({ item, after, why: reason }: Thing & { why: ReasonSaid }): string =>
    sentence(`${item}${when(after)} is at rest: ${why(reason)}`),
  hasOperatedAsSaid: ({ item, after }: Thing): string =>
    sentence(`${item}${when(after)} has operated, as said above`),
  isAtRestAsSaid: ({ item, after }: Thing): string =>
    sentence(`${item}${when(after)} is at rest, as said above`),
  stands: ({ item, after, state, why: reason }: Thing & { state: AnswerSaid; why: ReasonSaid }): string =>
    sentence(`${item}${when(after)} ${stands(state)}: ${why(reason)}`),
  standsWithOnly: ({
    item,
    after,
    state,
    has,
    rated,
    why: reason,
  }: Thing & { state: AnswerSaid; has: number; rated: number; why: ReasonSaid }): string =>
    sentence(`${item}${when(after)} ${stands(state)} with only ${volts(has)} of ${rated} V: ${why(reason)}`),
  flashes: ({ path: way, ...thing }: Flashing & { path: Path }): string =>
    sentence(`${thing.item}${when(thing.after)} never rests: it is fed by ${path(way)}${flashing(thing)}`),
  neverFed: (thing: Flashing): string =>
    sentence(`${thing.item}${when(thing.after)} never rests: it is never fed${flashing(thing)}`),

  live: ({ terminal, pole, hops: way }: Joined): string =>
    sentence(`${terminal} is live: ${[pole, ...way.map(hop), terminal].join(', ')}`),
  liveThrough: ({ terminal, pole, hops: way, loads }: Joined & { loads: readonly string[] }): string =>
    sentence(
      `${terminal} is live: ${[pole, ...way.map(hop), terminal].join(', ')}. It comes through ${speech.and(loads)}`,
    ),
  deadOpen: ({ terminal, open }: Terminal & { open: Places }): string =>
    sentence(`${terminal} is dead: ${placesOpen(open)}`),
  deadReturn: ({ terminal, pole }: Terminal & { pole: string }): string =>
    sentence(`${terminal} is dead: closed contacts and loads join it only to ${pole}`),
  deadAlone: ({ terminal }: Terminal): string =>
    sentence(`${terminal} is dead: nothing joins it to a supply`),
  onSite:
    'On site this is proved, never taken from a drawing: isolate, lock off, prove dead with a proved tester.',

  hangsFree: ({ terminal }: Terminal): string =>
    sentence(`nothing joins ${terminal} to a supply: it hangs free`),
  isPole: ({ terminal, supply }: Terminal & { supply: string }): string =>
    sentence(`${terminal} is a pole of supply ${supply}`),
  onConductor: ({ terminal, pole }: Terminal & { pole: string }): string =>
    sentence(`${terminal} is on the conductor of ${pole}`),
  joined: (point: Joined): string => sentence(joined(point)),
  joinedNoCurrent: ({
    loads,
    open,
    ...point
  }: Joined & { loads: readonly string[]; open?: Places }): string =>
    sentence(
      `${joined(point)}; no current flows in ${speech.and(loads)}, so nothing is dropped there${open ? `: ${placesOpen(open)}` : ''}`,
    ),
  joinedDropping: ({ loads, drop, ...point }: Joined & { loads: readonly string[]; drop: number }): string =>
    sentence(`${joined(point)}; current flows, and ${speech.and(loads)} drops ${volts(drop)}`),
  joinedDirty: ({ drop, ...point }: Joined & { drop: number }): string =>
    sentence(`${joined(point)}; current flows, and the dirty contact drops ${volts(drop)}`),
  open: ({ place }: { place: PlaceSaid }): string => sentence(say(places, place)),
  closed: ({ place }: { place: PlaceSaid }): string => sentence(say(places, place)),
  samePotential: 'Both points have the same potential: the meter reads 0 V.',
  reads: ({ volts: read }: { volts: number }): string => `Between the two the meter reads ${volts(read)}.`,
  isolated: ({ one, other }: { one: string; other: string }): string =>
    `Supplies ${one} and ${other} are isolated from each other and have no common reference: the meter shows nothing.`,
  noReference: 'The two points have no common reference: the meter shows nothing.',

  connectedTo: ({ first, second }: { first: string; second: string }): string =>
    `Connected to ${first} and ${second}:`,
  notTwoLegs: ({ first, second, common }: { first: string; second: string; common: string }): string =>
    `Not ${first} and ${second}: no contact joins the two legs of a pole; the common ${common} is always used.`,
};
type SimpleSaid = StatementOf<typeof sayings>;

export const explaining = {
  ...sayings,
  not: ({ first, second, told }: { first: string; second: string; told: SimpleSaid }): string =>
    `Not ${first} and ${second}: ${lowered(say(sayings, told))}`,
};
export type ExplainingSaid = StatementOf<typeof explaining>;

export const hints = {
  beginWith: ({ device, moment: at }: { device: string; moment: Moment }): string =>
    `Begin with ${device}: follow the path of its coil from one pole to the other, and see whether it is closed ${moment(at)}.`,
  followPath: ({ item }: { item: string }): string =>
    `Follow the path of ${item} from one pole to the other, contact by contact, and look at how each contact stands.`,
  eachPoint: ({ first, second }: { first: string; second: string }): string =>
    `Take each point by itself: to which pole of which supply do closed contacts join ${first}, and to which ${second}? A load in which no current flows drops nothing.`,
  eachTerminal: ({ supplies }: { supplies: readonly string[] }): string =>
    `Ask of each terminal to which supply (${speech.and(supplies)}) closed contacts join it.`,
  bothSidesFirst: ({ device, supplies }: { device: string; supplies: readonly string[] }): string =>
    `Look first at the two sides of ${device}: which supply comes to it, and what is behind it? Then ask of each terminal to which supply (${speech.and(supplies)}) closed contacts join it.`,
  whichOperated: ({ load, state }: { load: string; state: AnswerSaid }): string =>
    `Ask first which relays have operated when ${load} ${state.says === '0' || state.says === '1' ? `is to read ${state.says}` : `is to be ${say(answers, state)}`}, and which in the other cases. Look for a contact that is closed in the one and open in the other.`,
};
export type HintSaid = StatementOf<typeof hints>;
