/** What stands at the head of a circuit: its title, the first comment, and whether it is drawn as it was found. */

import { quote } from './line-words.ts';
import type { Report } from './report.ts';

const LONGEST = 120;

/** The line that says that a circuit is drawn as it was found. */
export const AS_FOUND = 'as-found';

/** `comment`: what follows the `#`. An empty comment is no title; one text in quotation marks is exactly that text. */
export function titleOf(comment: string, line: string, number: number, report: Report): string | undefined {
  const plain = comment.trim();
  if (plain === '') return undefined;
  const title = quotedWhole(plain) ?? plain;
  if (title.length <= LONGEST) return title;
  report.add({ says: 'text-too-long.title', most: LONGEST }, { line: number, column: line.indexOf('#') + 1 });
  return undefined;
}

function quotedWhole(text: string): string | undefined {
  return /^"(?:[^"\\]|\\["\\])*"$/.test(text) ? text.slice(1, -1).replace(/\\(["\\])/g, '$1') : undefined;
}

/** The comment line of a title: plain, or in quotation marks where reading it back would change it. */
export const titleLine = (title: string): string =>
  `# ${title === '' || title !== title.trim() || title.startsWith('"') ? quote(title) : title}`;
