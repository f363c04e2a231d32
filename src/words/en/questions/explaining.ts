/** Why things stand as they stand, sentence by sentence, and what to look at first. */
import { type StatementOf, say } from '../../statement.ts';
import { type AnswerSaid, answers } from '../answers.ts';
import { type ActSaid, acts, type FaultSaid, faults, time } from '../circuit.ts';
import { speech } from '../speech.ts';
import { capital, lowered, volts as signedVolts } from '../text.ts';
import { type Moment, moment } from './asking.ts';
import { type Feed, type FeedPart, feed, parts } from './feeds.ts';
import { type Hop, hop, openOneByOne, type PlaceSaid, type Places, places, placesOpen } from './places.ts';
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
  operated: 'has operated',
  rest: 'is at rest',
  flashing: 'flashes',
  pulsing: 'pulses',
  changing: 'never rests',
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
  readonly by: readonly FeedPart[];
}
const joined = ({ terminal, pole, by }: Joined): string => `${terminal} is joined to ${pole} by ${parts(by)}`;
const live = ({ terminal, pole, by }: Joined): string =>
  by.length > 0
    ? `${terminal} is live: it is joined to ${pole} through ${parts(by)}`
    : `${terminal} is live: it is on the conductor of ${pole}`;

/** What a point that is measured at is joined to. */
const points = {
  hangsFree: ({ terminal }: Terminal): string => `nothing joins ${terminal} to a supply, so it hangs free`,
  isPole: ({ terminal, supply }: Terminal & { supply: string }): string =>
    `${terminal} is a pole of supply ${supply}`,
  onConductor: ({ terminal, pole }: Terminal & { pole: string }): string =>
    `${terminal} is on the conductor of ${pole}`,
  joined,
  joinedNoCurrent: ({ open, ...point }: Joined & { open?: Places }): string =>
    `${joined(point)}, where no current flows${open ? ` (${placesOpen(open)})` : ''} and nothing is dropped`,
  joinedDropping: ({ loads, drop, ...point }: Joined & { loads: readonly string[]; drop: number }): string =>
    `${joined(point)}, where current flows, and ${speech.and(loads)} ${speech.plural(loads.length, { one: 'drops', other: 'drop' })} ${volts(drop)}`,
  joinedDirty: ({ drop, ...point }: Joined & { drop: number }): string =>
    `${joined(point)}, where current flows, and the dirty contact drops ${volts(drop)}`,
};
export type PointSaid = StatementOf<typeof points>;

/** What a meter shows. */
const readings = {
  samePotential: 'the meter reads 0 V, because both points have the same potential',
  reads: ({ volts: read }: { volts: number }): string => `the meter reads ${signedVolts(read)}`,
  isolated: ({ one, other }: { one: string; other: string }): string =>
    `the meter shows nothing, because supplies ${one} and ${other} are isolated from each other and have no common reference`,
  noReference: 'the meter shows nothing, because the two points have no common reference',
};
export type ReadingSaid = StatementOf<typeof readings>;

const numbered = (all: readonly { number: number; act: ActSaid }[]): string =>
  speech.and(all.map(({ number, act }) => `${number} (${say(acts, act)})`));

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
  /** On a drawing as found: a stop that something leads round. */
  ledRound: ({
    relay,
    stop,
    by,
    from,
    to,
  }: {
    relay: string;
    stop: Hop;
    by: readonly Hop[];
    from: string;
    to: string;
  }): string =>
    `As found, ${hops(by)} ${speech.plural(by.length, { one: 'leads', other: 'lead' })} from ${from} to ${to} past ${hop(stop)}, so ${relay} stays in although that opens.`,
  /** What decides, without why. */
  standsThrough: ({
    item,
    after,
    state,
    contacts,
  }: Thing & { state: AnswerSaid; contacts: readonly Hop[] }): string =>
    sentence(`${item}${when(after)} ${stands(state)}, fed through ${hops(contacts)}`),
  standsSo: ({ item, after, state }: Thing & { state: AnswerSaid }): string =>
    sentence(`${item}${when(after)} ${stands(state)}`),
  flashes: ({ feed: way, ...thing }: Flashing & { feed: Feed }): string =>
    sentence(`${thing.item}${when(thing.after)} never rests: it is fed ${feed(way)}${flashing(thing)}`),
  neverFed: (thing: Flashing): string =>
    sentence(`${thing.item}${when(thing.after)} never rests: it is never fed${flashing(thing)}`),

  live: (at: Joined): string => sentence(live(at)),
  liveThrough: ({ loads, ...at }: Joined & { loads: readonly string[] }): string =>
    sentence(`${live(at)}. It comes through ${speech.and(loads)}`),
  liveFrom: ({ terminal, pole }: Terminal & { pole: string }): string =>
    sentence(`${terminal} is live from ${pole}`),
  deadOpen: ({ terminal, open, besides }: Terminal & { open: Places; besides?: Places }): string =>
    sentence(`${terminal} is dead: ${openOneByOne(open, besides)}`),
  deadReturn: ({ terminal, pole }: Terminal & { pole: string }): string =>
    sentence(`${terminal} is dead: closed contacts and loads join it only to ${pole}`),
  deadAlone: ({ terminal }: Terminal): string =>
    sentence(`${terminal} is dead: nothing joins it to a supply`),
  idleFaults: ({ all }: { all: readonly FaultSaid[] }): string =>
    `${capital(speech.and(all.map((fault) => `that ${say(faults, fault)}`)))} ${speech.plural(all.length, { one: 'changes', other: 'change' })} nothing of what was asked: without that the same would stand.`,
  /** Of a contact that is always so. */
  idleAnyway: ({ fault, closed }: { fault: FaultSaid; closed: boolean }): string =>
    `That ${say(faults, fault)} changes nothing of what was asked: it would be ${closed ? 'closed' : 'open'} anyway.`,
  /** What is lost, and comes back. */
  idleActs: ({ acts: done }: { acts: readonly { number: number; act: ActSaid }[] }): string =>
    speech.plural(done.length, {
      one: `Act ${numbered(done)} changes nothing of what was asked: without it the same would stand.`,
      other: `Acts ${numbered(done)} change nothing of what was asked: without them the same would stand.`,
    }),
  onSite:
    'On site this is proved, never taken from a drawing: isolate, lock off, prove dead with a proved tester.',

  open: ({ place }: { place: PlaceSaid }): string => sentence(say(places, place)),
  closed: ({ place }: { place: PlaceSaid }): string => sentence(say(places, place)),
  shows: ({ reading, one, other }: { reading: ReadingSaid; one: PointSaid; other: PointSaid }): string =>
    sentence(`${say(readings, reading)}: ${say(points, one)}, and ${say(points, other)}`),
  showsSo: ({ reading }: { reading: ReadingSaid }): string => sentence(say(readings, reading)),

  connectedTo: ({ first, second }: { first: string; second: string }): string =>
    `With the two ends on ${first} and ${second} everything stated comes true.`,
  notTwoLegs: ({ first, second, common }: { first: string; second: string; common: string }): string =>
    `Not ${first} and ${second}: no contact joins the two legs of a pole; the common ${common} is always used.`,
};
/** How one thing stands, with its reason. */
export type StandingSaid = Extract<
  StatementOf<typeof sayings>,
  { says: 'stands' | 'standsWithOnly' | 'flashes' | 'neverFed' }
>;

export const explaining = {
  ...sayings,
  /** One of the things that a wiring has to do. */
  wanted: ({ number, told }: { number: number; told: StandingSaid }): string =>
    `${number}. ${say(sayings, told)}`,
  not: ({
    first,
    second,
    number,
    told,
  }: {
    first: string;
    second: string;
    number: number;
    told: StandingSaid;
  }): string => `Not ${first} and ${second}: under ${number}, ${lowered(say(sayings, told))}`,
};
export type ExplainingSaid = StatementOf<typeof explaining>;

export const hints = {
  beginWith: ({ device, moment: at }: { device: string; moment: Moment }): string =>
    `Begin with ${device}: follow the path of its coil from one pole to the other, and see whether it is closed ${moment(at)}.`,
  beginWithHeld: ({ device, moment: at }: { device: string; moment: Moment }): string =>
    `Begin with ${device}: it is held in by hand ${moment(at)}, whatever its coil has. Look at what its contacts do.`,
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
