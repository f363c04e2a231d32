/** Classes, sets and people by what somebody calls them on the command line: one rule, and one way to say what could be meant. */
import type { CommandWords } from '../words/commands.ts';
import { UsageError } from './io.ts';

export interface Named {
  readonly id: string;
  /** The title, or the name of somebody. */
  readonly called: string;
  /** What tells those apart that are called the same: the class of a set, the name with which somebody signs in. */
  readonly of?: string | null | undefined;
}

/** What kind of thing is named. */
export type Kind = 'class' | 'set' | 'person';

/** Of a title a part will do; of somebody's name it won't. */
const IN_PART: Readonly<Record<Kind, boolean>> = { class: true, set: true, person: false };

/** How many are named where none is meant. */
const MOST_NAMED = 20;

/** Names are kept in composed letters; some terminals and files give them taken apart. */
const inSmall = (text: string): string => text.normalize('NFC').trim().toLowerCase();
const wordsOf = (text: string): readonly string[] => inSmall(text).match(/[\p{L}\p{M}\p{N}]+/gu) ?? [];

/** Whether all words of a text stand together in a title: `week 4` in `Ice works, week 4`, and not in `Week 40`. */
function hasWords(title: string, text: string): boolean {
  const wanted = wordsOf(text);
  return wanted.length > 0 && ` ${wordsOf(title).join(' ')} `.includes(` ${wanted.join(' ')} `);
}

const listed = (some: readonly Named[]): string =>
  some.map(({ id, called, of }) => `    ${id}  ${called}${of ? ` (${of})` : ''}`).join('\n');

/**
 * The one that is meant: by its id; else the one that is called just so, in large letters or small; else the only one whose title
 * has these words in it.
 *
 * @throws UsageError when there is none, or several, with all that could be meant
 */
export function theOne<T extends Named>(
  all: readonly T[],
  text: string,
  kind: Kind,
  { named }: CommandWords,
): T {
  const said = named[kind];
  const small = inSmall(text);
  const ways: readonly ((one: T) => boolean)[] = [
    ({ id }) => id === text,
    ({ called }) => inSmall(called) === small,
    ({ called }) => IN_PART[kind] && hasWords(called, text),
  ];
  const found = ways.map((isMeant) => all.filter(isMeant)).find((some) => some.length > 0) ?? [];
  const [one, another] = found;
  if (one && !another) return one;
  if (one)
    throw new UsageError(
      said.several({ count: found.length, called: text }),
      `${named.nameByTheId}\n${listed(found)}`,
    );
  const there = all.slice(0, MOST_NAMED);
  throw new UsageError(
    said.none(text),
    there.length > 0 ? `${named.thereAre}\n${listed(there)}` : said.otherwise,
  );
}
