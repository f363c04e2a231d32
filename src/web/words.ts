/** The words that the page speaks, in the language that whoever uses it reads. */
import type { ComponentChildren } from 'preact';
import { PAGE_LANGUAGES, type PagePart, type PageWords } from '../words/pages.ts';

/** The first of the reader's languages that there is; English where there is none. */
export const language: string =
  (globalThis.navigator?.languages ?? [])
    .map((tag) => tag.split('-', 1)[0]!.toLowerCase())
    .find((tag) => Object.hasOwn(PAGE_LANGUAGES, tag)) ?? 'en';

const fetched: { [P in PagePart]?: PageWords[P] } = {};

async function fetchPart<P extends PagePart>(part: P): Promise<void> {
  fetched[part] ??= await PAGE_LANGUAGES[language]![part]();
}

/** Has these parts there. */
export const fetchWords = (...parts: readonly PagePart[]): Promise<unknown> =>
  Promise.all(parts.map((part) => fetchPart(part)));

/**
 * A part of the words that has been fetched.
 *
 * @throws RangeError when it hasn't: whoever shows a screen fetches its words with it, by `spoken`
 */
export function words<P extends PagePart>(part: P): PageWords[P] {
  const there = fetched[part];
  if (!there) throw new RangeError(`the words of ${part} have not been fetched`);
  return there as PageWords[P];
}

/** Fetches something of the page together with the words that it speaks. */
export const spoken =
  <T>(parts: readonly PagePart[], load: () => Promise<T>): (() => Promise<T>) =>
  async () => {
    const [loaded] = await Promise.all([load(), fetchWords(...parts)]);
    return loaded;
  };

const MARKED = /<(\w+)>(.*?)<\/\1>|\{(\w+)\}/g;

/**
 * A whole sentence with elements in it: `<code>Hand out the joining code</code>` is given to what is called `code`, which makes
 * a link of it, and in the place of `{name}` stands what is called so.
 */
export function set(
  sentence: string,
  parts: Readonly<Record<string, ComponentChildren | ((text: string) => ComponentChildren)>>,
): ComponentChildren[] {
  const pieces: ComponentChildren[] = [];
  let from = 0;
  for (const found of sentence.matchAll(MARKED)) {
    pieces.push(sentence.slice(from, found.index));
    const part = parts[found[1] ?? found[3]!];
    pieces.push(typeof part === 'function' ? part(found[2] ?? '') : (part ?? found[0]));
    from = found.index + found[0].length;
  }
  return [...pieces, sentence.slice(from)].filter((piece) => piece !== '');
}

/** Keeps a designation or a range of terminals in one piece where a line ends: `-K3:11-14`. */
export const unbroken = (text: string): string =>
  text.replace(/(^|[\s("/,;:])-(?=[A-Z])/g, '$1-\u2060').replace(/(\d)-(?=\d)/g, '$1-\u2060');
