/** Parts of what is said of problems. */
import { printable } from '../../printable.ts';

/** A word of the input, in quotation marks. */
export const shown = (word: string): string => `"${printable(word)}"`;

/** How a number is bounded. */
export const BOUNDS = {
  most: (limit: number) => `at most ${limit}`,
  least: (limit: number) => `at least ${limit}`,
  more: (limit: number) => `more than ${limit}`,
};

/** At most this many items of a long list, and that there are more. */
export const someOf = (items: readonly string[], most = 12): string =>
  items.length <= most ? items.join(', ') : `${items.slice(0, most).join(', ')}, …`;

/** `a relay`, `an on-delay`; kinds that are a plural stand alone. */
export const article = (noun: string): string =>
  /(puts|terminals)$/.test(noun) ? noun : `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;

/** What was meant by a slip of the pen, where there is something near. */
export interface Slip {
  readonly meant?: string | undefined;
}

/** What would be right, after what was probably meant. */
export const asMeant = ({ meant }: Slip, right: string): string =>
  meant === undefined ? right : `Did you mean ${meant}? ${right}`;
