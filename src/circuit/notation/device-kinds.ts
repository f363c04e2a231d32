/** Every kind of device in the notation: its options in the order they are written, and what it is when they are left out. */
import { colour, type DeviceKind } from '../../../shared/circuit.ts';
import type { LackingSaid } from '../../words/index.ts';
import { INPUT_BANDS } from '../standards.ts';
import {
  auxiliaries,
  bareCount,
  contacts,
  delay,
  earthed,
  label,
  labelAndPoints,
  measure,
  type Option,
  oneOf,
  phase,
  positions,
  voltage,
} from './options.ts';

export interface Grammar {
  readonly options: readonly Option[];
  /** Values of fields that a line may leave out. A rating left out is the first supply's. */
  readonly defaults: Readonly<Record<string, unknown>>;
  /** Fields that a line must have, each with what is missing without it. */
  readonly required: Readonly<Record<string, LackingSaid>>;
}

const grammar = (
  options: readonly Option[],
  defaults: Readonly<Record<string, unknown>> = {},
  required: Readonly<Record<string, LackingSaid>> = {},
): Grammar => ({ options, defaults, required });

const rating = voltage(['AC', 'DC'], false);
const poles = measure('poles', 'poles', 'poles', 1);
const amps = measure('amps', 'A');
const watts = measure('watts', 'W');
const colours = oneOf('colour', colour.options);

const CONTACTS_NEEDED = { contacts: { says: 'contact' } } as const;
const DELAY_NEEDED = { seconds: { says: 'delay' } } as const;
const COUNT_NEEDED = { count: { says: 'count' } } as const;

const switched = grammar([contacts(), label], {}, CONTACTS_NEEDED);
const timer = grammar([delay, poles, rating, label], { poles: 1 }, DELAY_NEEDED);
const load = grammar([watts, rating, label]);

export const GRAMMARS: Readonly<Record<DeviceKind, Grammar>> = {
  relay: grammar([poles, rating, label], { poles: 1 }),
  contactor: grammar([measure('mains', 'main'), auxiliaries, rating, label], { mains: 3, contacts: [] }),
  'on-delay': timer,
  'off-delay': timer,
  flasher: grammar(
    [phase('on'), phase('off'), poles, rating, label],
    { poles: 1 },
    { on: { says: 'on' }, off: { says: 'off' } },
  ),
  'latching-relay': grammar([poles, rating, label], { poles: 1 }),
  'push-button': grammar([contacts(), colours, label], {}, CONTACTS_NEEDED),
  'emergency-stop': switched,
  selector: grammar(
    [positions, contacts(true), label],
    {},
    { positions: { says: 'positions' }, ...CONTACTS_NEEDED },
  ),
  'field-contact': switched,
  'limit-switch': switched,
  'float-switch': switched,
  overload: grammar([label]),
  fuse: grammar([poles, amps, label], { poles: 1 }),
  breaker: grammar([poles, amps, label], { poles: 1 }),
  isolator: grammar([poles, label], { poles: 1 }),
  lamp: grammar([colours, watts, rating, label]),
  sounder: load,
  valve: load,
  motor: grammar(
    [measure('volts', 'V'), measure('terminals', 'terminals', 'terminals', 3), label],
    { terminals: 3 },
    { volts: { says: 'winding' } },
  ),
  inputs: grammar(
    [bareCount, oneOf('type', Object.keys(INPUT_BANDS)), labelAndPoints],
    { points: [] },
    { ...COUNT_NEEDED, type: { says: 'inputType', types: Object.keys(INPUT_BANDS) } },
  ),
  outputs: grammar([bareCount, labelAndPoints], { points: [] }, COUNT_NEEDED),
  terminals: grammar([bareCount, label], {}, COUNT_NEEDED),
};

export const SUPPLY_GRAMMAR: Grammar = grammar(
  [voltage(['AC', 'DC', '3AC'], true), earthed, label],
  { earthed: false },
  { volts: { says: 'voltage' } },
);

export const KINDS = Object.keys(GRAMMARS) as DeviceKind[];

/** Kinds whose rating may be left out. */
export const hasRating = (kind: DeviceKind): boolean => GRAMMARS[kind].options.includes(rating);

/** Every word that means something somewhere. */
export const ALL_WORDS: ReadonlySet<string> = new Set([
  'supply',
  'sheet',
  ...KINDS,
  ...[SUPPLY_GRAMMAR, ...Object.values(GRAMMARS)].flatMap((each) =>
    each.options.flatMap((option) => option.words),
  ),
]);
