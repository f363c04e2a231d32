/** What a line of the notation may hold after its first word, and what is usual in it. */
import { colour } from '../../../shared/circuit.ts';
import type { LackingSaid } from '../../words/index.ts';
import { earthed, label, measure, type Option, oneOf, voltage } from './options.ts';

export interface Grammar {
  readonly options: readonly Option[];
  /** Values of fields that a line may leave out. A rating left out is the first supply's. */
  readonly defaults: Readonly<Record<string, unknown>>;
  /** Fields that a line must have, each with what is missing without it. */
  readonly required: Readonly<Record<string, LackingSaid>>;
}

export const grammar = (
  options: readonly Option[],
  defaults: Readonly<Record<string, unknown>> = {},
  required: Readonly<Record<string, LackingSaid>> = {},
): Grammar => ({ options, defaults, required });

export const rating = voltage(['AC', 'DC'], false);
export const poles = measure('poles', 'poles', 'poles', 1);
export const amps = measure('amps', 'A');
export const watts = measure('watts', 'W');
export const colours = oneOf('colour', colour.options);

export const CONTACTS_NEEDED = { contacts: { says: 'contact' } } as const;
export const COUNT_NEEDED = { count: { says: 'count' } } as const;

export const SUPPLY_GRAMMAR: Grammar = grammar(
  [voltage(['AC', 'DC', '3AC'], true), earthed, label],
  { earthed: false },
  { volts: { says: 'voltage' } },
);
