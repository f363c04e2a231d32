/** The words of the notation: kinds of devices, and all that belongs to something somewhere. */
import type { DeviceKind } from '../../../shared/circuit.ts';
import { rating, SUPPLY_GRAMMAR } from './grammar.ts';
import { GRAMMARS } from './grammars.ts';

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
