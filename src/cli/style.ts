import type { Io } from './io.ts';

/** Emphasis for a terminal; plain text where it shows no colour. Nothing is said by colour alone. */
export interface Style {
  readonly strong: (text: string) => string;
  readonly quiet: (text: string) => string;
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly note: (text: string) => string;
}

const wrap = (open: number, close: number) => (text: string) => `\u001b[${open}m${text}\u001b[${close}m`;
const plain = (text: string): string => text;

export const styleFor = ({ colour }: Pick<Io, 'colour'>): Style =>
  colour
    ? { strong: wrap(1, 22), quiet: wrap(2, 22), good: wrap(32, 39), bad: wrap(31, 39), note: wrap(36, 39) }
    : { strong: plain, quiet: plain, good: plain, bad: plain, note: plain };

/** Breaks text at spaces so that no line is longer than `columns`, with an indent for all lines but the first. */
export function wrapText(text: string, columns: number, indent = ''): string {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const word of paragraph.split(' ')) {
      const next = line === '' ? word : `${line} ${word}`;
      if (next.length > columns && line !== '') {
        lines.push(line);
        line = `${indent}${word}`;
      } else line = next;
    }
    lines.push(line);
  }
  return lines.join('\n');
}
