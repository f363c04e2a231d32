/** The words of a typed answer, for readers that forgive. */

import type { Words } from '../../words/index.ts';

/** More than the longest sensible answer; what comes after is not looked at. */
const LONGEST = 4000;

/** Signs that stand between words. */
const NO_WORDS = ['&', ':', '.'];

export interface Token {
  /** As it was written, without the colon or equals sign behind it. */
  readonly text: string;
  /** Something like `lit:` or `-H1 =`: what follows belongs to it. */
  readonly leads: boolean;
}

/**
 * Words apart at white space, commas, semicolons and words like "and"; a colon or an equals sign stays with the word before
 * it.
 */
export function tokensOf(text: string, typed: Words['typed']): Token[] {
  return text
    .slice(0, LONGEST)
    .replace(new RegExp(`(?<![\\p{L}\\p{N}_])${typed.atTheStart}(?![\\p{L}\\p{N}_])`, 'giu'), typed.start[0]!)
    .replace(/\s*(?:=|:(?=\s|$)|(?<=\b[a-z]{2,}):)+/gi, ': ')
    .split(/[\s,;/|]+/)
    .filter((word) => word !== '' && !NO_WORDS.includes(word) && !typed.between.includes(word.toLowerCase()))
    .map((word) => {
      const leads = word.endsWith(':');
      const bare = leads ? word.slice(0, -1) : word;
      return { text: bare.replace(/[.!]+$/, ''), leads };
    })
    .filter(({ text: word }) => word !== '');
}

/** A designation or terminal the way it is compared: without the leading minus, in capitals. */
export const plainName = (text: string): string =>
  text
    .trim()
    .replace(/^[-–−]/, '')
    .toUpperCase();
