import type { Io } from './io.ts';

/** Whether the terminal shows nothing but ASCII. */
export const asciiOnly = ({ environment }: Pick<Io, 'environment'>): boolean =>
  /^(C|POSIX)$/.test(environment['LC_ALL'] || environment['LC_CTYPE'] || environment['LANG'] || '');

/** Emphasis for a terminal; plain text where it shows no colour. Nothing is said by colour alone. */
export interface Style {
  readonly strong: (text: string) => string;
  readonly quiet: (text: string) => string;
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly note: (text: string) => string;
}

const ESCAPE = String.fromCharCode(27);
/** What `Style` puts around a text. */
const EMPHASIS = new RegExp(`${ESCAPE}\\[[0-9]+m`, 'g');

const wrap = (open: number, close: number) => (text: string) =>
  `${ESCAPE}[${open}m${text}${ESCAPE}[${close}m`;
const plain = (text: string): string => text;

export const styleFor = ({ colour }: Pick<Io, 'colour'>): Style =>
  colour
    ? { strong: wrap(1, 22), quiet: wrap(2, 22), good: wrap(32, 39), bad: wrap(31, 39), note: wrap(36, 39) }
    : { strong: plain, quiet: plain, good: plain, bad: plain, note: plain };

/**
 * Breaks text at spaces so that no line is longer than `columns`. Spaces at the start of a paragraph stay; its other
 * lines begin with `indent`.
 */
export function wrapText(text: string, columns: number, indent = ''): string {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    const lead = paragraph.match(/^ */)![0];
    let line = lead;
    let empty = true;
    for (const word of paragraph.slice(lead.length).split(' ')) {
      if (!empty && shownLength(line) + 1 + shownLength(word) > columns) {
        lines.push(line);
        line = `${indent}${word}`;
      } else {
        line = empty ? `${line}${word}` : `${line} ${word}`;
      }
      empty = false;
    }
    lines.push(line);
  }
  return lines.join('\n');
}

/** Characters that take a place on the screen. */
const shownLength = (text: string): number => text.replaceAll(EMPHASIS, '').length;
