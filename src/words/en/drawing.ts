/** Drawings in words: what stands on them beside designations, what is seen on them, and what happens on them in turn. */
import { type StatementOf, say } from '../statement.ts';
import { type ActSaid, acts, type Named, time } from './circuit.ts';
import { colours, deviceKinds } from './devices.ts';
import { capital } from './text.ts';

/** Frame and title block, and headings in a terminal. */
const frame = {
  atRest: 'Drawn at rest: de-energised and unactuated',
  /** Of a state: before anything is done, and after acts as they are written. */
  supplied: 'Drawn with the supply on, unactuated',
  after: (acts: string): string => `Drawn with the supply on, after: ${acts}`,
  sheet: (sheet: string): string => `Sheet ${sheet}`,
  sheetTitled: ({ sheet, title }: { sheet: string; title: string }): string => `Sheet ${sheet}: ${title}`,
  pieceOf: ({ sheet, piece, pieces }: { sheet: string; piece: number; pieces: number }): string =>
    `${sheet} (${piece} of ${pieces})`,
};

/** A device as it stands on a drawing. What isn't there isn't said. */
export interface Drawn {
  readonly kind: keyof typeof deviceKinds;
  readonly name: string;
  readonly text?: string;
  readonly colour?: keyof typeof colours;
  readonly amps?: number;
  readonly seconds?: number;
  readonly on?: number;
  readonly off?: number;
}

/** `relay -K3`, `field contact -B1 "Fan tripped"`, `on-delay timer -K4 (5 s)`. */
function device({ kind, name, text, colour, amps, seconds, on, off }: Drawn): string {
  const noun = [...(colour ? [colours[colour]] : []), ...(amps ? [`${amps} A`] : []), deviceKinds[kind]].join(
    ' ',
  );
  const times =
    seconds !== undefined
      ? ` (${time(seconds)})`
      : on !== undefined && off !== undefined
        ? ` (${time(on)} on, ${time(off)} off)`
        : '';
  return `${noun} ${name}${times}${text ? ` "${text}"` : ''}`;
}

/** `path 2`, or `sheet 1, path 2` where there are several sheets. */
export interface PathPlace {
  readonly path: string;
  readonly sheet?: string;
}
const at = ({ path, sheet }: PathPlace): string =>
  sheet === undefined ? `path ${path}` : `sheet ${sheet}, path ${path}`;

/** The terminals at which a path comes in and goes on. */
const through = (terminals: readonly string[]): string => terminals.join(' to ');

interface Part {
  readonly device: Drawn;
  readonly through: readonly string[];
  /** Where the coil is that moves it. */
  readonly coil?: PathPlace;
}
interface Contact extends Part {
  readonly late?: 'operating' | 'releasing';
  /** Of a selector: the positions in which it is closed. */
  readonly positions?: string;
}
interface Changeover extends Omit<Contact, 'through' | 'positions'> {
  readonly common: string;
  readonly breakLeg: string;
  readonly makeLeg: string;
  /** Of a selector: the positions in which either is closed. */
  readonly breakIn?: string;
  readonly makeIn?: string;
  /** The leg from which the path goes on. */
  readonly onFrom?: string;
}
const late = ({ late: how }: Pick<Contact, 'late'>): string =>
  how === undefined ? '' : how === 'operating' ? 'late-operating ' : 'late-releasing ';
const coilIn = ({ coil }: Pick<Part, 'coil'>): string => (coil ? ` (coil in ${at(coil)})` : '');
const closedIn = ({ positions }: { positions?: string | undefined }): string =>
  positions ? ` (closed in ${positions})` : '';
const point = ({ text }: { text?: string }): string => (text ? ` "${text}"` : '');

const stops = {
  make: (part: Contact): string =>
    `${late(part)}make contact${closedIn(part)} ${through(part.through)} of ${device(part.device)}${coilIn(part)}`,
  break: (part: Contact): string =>
    `${late(part)}break contact${closedIn(part)} ${through(part.through)} of ${device(part.device)}${coilIn(part)}`,
  changeover: (part: Changeover): string =>
    `${late(part)}changeover contact with common ${part.common}, break leg ${part.breakLeg}${closedIn({ positions: part.breakIn })} and make leg ${part.makeLeg}${closedIn({ positions: part.makeIn })} of ${device(part.device)}${coilIn(part)}${part.onFrom === undefined ? '' : `, on from ${part.onFrom}`}`,
  pole: (part: Part): string => `pole ${through(part.through)} of ${device(part.device)}${coilIn(part)}`,
  whole: (part: Part): string => `${device(part.device)}, ${through(part.through)}${coilIn(part)}`,
  coil: (part: Part): string => `coil ${through(part.through)} of ${device(part.device)}`,
  setCoil: (part: Part): string => `set coil ${through(part.through)} of ${device(part.device)}`,
  resetCoil: (part: Part): string => `reset coil ${through(part.through)} of ${device(part.device)}`,
  controlInput: (part: Part): string => `control input ${through(part.through)} of ${device(part.device)}`,
  input: (part: Part & { text?: string }): string =>
    `input ${through(part.through)}${point(part)} of ${device(part.device)}`,
  output: (part: Part & { text?: string }): string =>
    `output ${through(part.through)}${point(part)} of ${device(part.device)}${coilIn(part)}`,
  common: (part: Part): string => `common ${through(part.through)} of ${device(part.device)}${coilIn(part)}`,
  terminal: ({ terminal }: { terminal: string }): string => `terminal ${terminal}`,
};
export type StopSaid = StatementOf<typeof stops>;

/** Where a conductor comes from, or goes to: poles of a supply, or a terminal in another path. */
export type End =
  | { readonly poles: readonly string[] }
  | { readonly terminal: string; readonly place: PathPlace };
const end = (to: End): string =>
  'poles' in to ? to.poles.join(' and ') : `${to.terminal} (${at(to.place)})`;

/** A path, or a part of one, from its head to its foot. */
export interface Stretch {
  readonly from?: End;
  readonly stops: readonly StopSaid[];
  readonly to?: End;
}
const stretch = ({ from, stops: all, to }: Stretch): string =>
  [
    ...(from ? [`from ${end(from)}`] : []),
    ...all.map((stop) => say(stops, stop)),
    ...(to ? [`to ${end(to)}`] : []),
  ].join('; ');

const POLES: Readonly<Record<string, string>> = { AC: 'L and N', DC: 'L+ and L-' };

/** The drawing for who cannot see it: a line for each supply and each path. */
const described = {
  drawing: 'Control drawing. Drawn at rest: de-energised and unactuated.',
  asFound: 'As found: the words are what was meant, the wiring is what is.',
  drawingTitled: ({ title }: { title: string }): string =>
    `Control drawing: ${title}. Drawn at rest: de-energised and unactuated.`,
  supply: ({ volts, current, ...supply }: Named & { volts: number; current: string }): string =>
    `Supply ${supply.name}${point(supply)}: ${volts} V ${current}, poles ${POLES[current] ?? 'L1, L2, L3 and N'}.`,
  sheet: ({ sheet }: { sheet: number }): string => `Sheet ${sheet}.`,
  sheetTitled: ({ sheet, title }: { sheet: number; title: string }): string => `Sheet ${sheet}: ${title}.`,
  path: ({ path, whole }: { path: string; whole: Stretch }): string => `Path ${path}: ${stretch(whole)}.`,
  pathInTwo: ({ path, above, below }: { path: string; above: Stretch; below: Stretch }): string =>
    `Path ${path}: ${stretch(above)}. Further down in path ${path}: ${stretch(below)}.`,
};
export type DescribedSaid = StatementOf<typeof described>;

const named = ({ name, text }: Named): string => (text ? `${name} ("${text}")` : name);

/** What happens at one moment of a run. */
const captions = {
  act: ({ act }: { act: ActSaid }): string => `${capital(say(acts, act))}.`,
  energised: (coil: Named): string => `Coil ${named(coil)} is energised.`,
  deEnergised: (coil: Named): string => `Coil ${named(coil)} is de-energised.`,
  letsGo: (relay: Named): string => `${named(relay)} lets go: its make contacts open.`,
  picksUp: (relay: Named): string => `${named(relay)} picks up: its break contacts open.`,
  hasReleased: (relay: Named): string => `${named(relay)} has released: its break contacts close.`,
  hasOperated: (relay: Named): string => `${named(relay)} has operated: its make contacts close.`,
  backAtRest: (part: Named): string => `${named(part)} is back at rest.`,
  /** At one of its positions, or actuated, pressed, tripped, blown: `at` is the position's name. */
  standsAt: ({ at: position, ...part }: Named & { at: string }): string => `${named(part)} is ${position}.`,
  lights: (lamp: Named): string => `${named(lamp)} lights.`,
  glowsDimly: (lamp: Named): string => `${named(lamp)} glows dimly.`,
  goesDark: (lamp: Named): string => `${named(lamp)} goes dark.`,
  sounds: (sounder: Named): string => `${named(sounder)} sounds.`,
  soundsWeakly: (sounder: Named): string => `${named(sounder)} sounds weakly.`,
  fallsSilent: (sounder: Named): string => `${named(sounder)} falls silent.`,
  isOn: (load: Named): string => `${named(load)} is on.`,
  isWeak: (load: Named): string => `${named(load)} has too little voltage.`,
  isOff: (load: Named): string => `${named(load)} is off.`,
  inputReads: ({ input, reads }: { input: string; reads: string }): string =>
    `Input ${input} reads ${reads}.`,
  trips: (part: Named): string => `${named(part)} trips.`,
};
export type CaptionSaid = StatementOf<typeof captions>;

/** Timing diagrams. */
const timing = {
  /** A moment on the axis: milliseconds from the beginning. */
  moment: (ms: number): string => {
    if (ms === 0) return '0';
    if (ms < 1000) return `${Number(ms.toFixed(1))} ms`;
    return ms < 120_000 ? `${Number((ms / 1000).toFixed(2))} s` : `${Number((ms / 60_000).toFixed(1))} min`;
  },
  coil: (name: string): string => `${name} coil`,
  contacts: (name: string): string => `${name} contacts`,
  /** `at` is left out where no time passes at all. */
  act: ({ number, at: moment, act }: { number: number; at?: string; act: ActSaid }): string =>
    moment === undefined ? `${number}: ${say(acts, act)}` : `${number} at ${moment}: ${say(acts, act)}`,
  /** What its lines and signs mean, each written beside its sign. */
  key: {
    high: 'on, operated or closed',
    low: 'off or at rest',
    between: 'between its limits: dim, or neither 0 nor 1',
    onItsWay: 'contacts on their way',
    both: 'on and off again',
    cut: 'time left out',
    order: 'no time passes, only the order counts',
  },
  withTimes: 'Typical operate and release times are shown.',
  withoutTimes: 'The milliseconds that relays take to operate and release are not shown.',
};

export const drawing = {
  frame,
  described,
  captions,
  timing,
  /** After the last moment of a run. */
  inTheEnd: 'As it stands in the end.',
};
export type DrawingWords = typeof drawing;
