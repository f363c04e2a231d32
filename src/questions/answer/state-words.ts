/** Words that people write for a state, besides its own name. */
import { type StateName, say, type Words } from '../../words/index.ts';
import { type ItemKind, STATES } from '../items.ts';

/** Finds the state that a word means for an item of a kind; undefined when it means none. */
export type StateWords = (kind: ItemKind, word: string) => StateName | undefined;

/** The state of that name: what an answer holds as data. */
export const stateNamed: StateWords = (kind, name) =>
  STATES[kind].find((state) => state === name.trim().toLowerCase());

const made = new WeakMap<Words, StateWords>();

/** The names of the states, and what else is written for them in a language. */
export function stateWordsOf(words: Words): StateWords {
  const known = made.get(words);
  if (known) return known;
  const tables = new Map(
    (Object.keys(STATES) as ItemKind[]).map((kind) => [
      kind,
      new Map(
        STATES[kind].flatMap((state, index) =>
          [state, say(words.answers, { says: state }), ...words.typed.states[kind][index]!].map(
            (word) => [word.toLowerCase(), state] as const,
          ),
        ),
      ),
    ]),
  );
  const find: StateWords = (kind, word) => tables.get(kind)!.get(word.trim().toLowerCase());
  made.set(words, find);
  return find;
}
