/** The Markdown after the front matter as blocks with their lines, read by marked within limits. */
import { Lexer, type MarkedToken } from 'marked';
import { BANK_LIMITS } from '../limits.ts';
import type { BankReport } from '../report.ts';
import type { Lines } from '../source.ts';

/** A token of the outermost level and the lines of the file it was read from. */
export interface MarkdownBlock {
  readonly token: MarkedToken;
  readonly source: Lines;
}

// Options of its own, so that nothing set elsewhere on the library changes what a bank means.
const newLexer = (): Lexer => new Lexer({ gfm: true, breaks: false, pedantic: false });

/** The library's reader gives up on a few texts, such as a tab before a quote in a list: undefined then. */
function blocksOf(lexer: Lexer, text: string): MarkedToken[] | undefined {
  try {
    return lexer.blockTokens(text) as MarkedToken[];
  } catch {
    return undefined;
  }
}

/** The index of the line from which on it gives up, found by halving. */
function lineOfTrouble(lines: readonly string[]): number {
  let good = 0;
  let bad = lines.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (blocksOf(newLexer(), `${lines.slice(0, middle).join('\n')}\n`)) good = middle;
    else bad = middle;
  }
  return bad - 1;
}

const lineCount = (text: string): number => text.split('\n').length - 1;

/** Reads Markdown; undefined when it holds something that would take too long to read (reported). */
export function readMarkdown(
  { first, lines }: Lines,
  report: BankReport,
): readonly MarkdownBlock[] | undefined {
  // Blanks at line ends mean nothing here, and marked drops some of them from its tokens, which would spoil the places.
  const text = `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
  const lexer = newLexer();
  const tokens = blocksOf(lexer, text);
  if (!tokens) {
    report.add({ says: 'bank-markdown.unreadable' }, { line: first + lineOfTrouble(lines), column: 1 });
    return undefined;
  }
  let at = 0;
  const blocks = tokens.map((token): MarkdownBlock => {
    const from = at;
    at += lineCount(token.raw);
    const ends = token.raw.endsWith('\n') ? at : at + 1;
    return { token, source: { first: first + from, lines: lines.slice(from, ends) } };
  });
  const tooLong = lexer.inlineQueue.filter(({ src }) => isTooLong(src));
  for (const { src } of tooLong) {
    const start = src.slice(0, 60).split('\n')[0]!;
    const block = blocks.find(({ token }) => token.raw.includes(start));
    report.add(
      {
        says: 'bank-too-large.paragraph',
        characters: BANK_LIMITS.paragraph,
        signs: BANK_LIMITS.emphasisSigns,
      },
      { line: block?.source.first ?? first, column: 1 },
    );
  }
  if (tooLong.length > 0) return undefined;
  for (const { src, tokens: into } of lexer.inlineQueue) lexer.inlineTokens(src, into);
  return blocks;
}

const isTooLong = (source: string): boolean =>
  source.length > BANK_LIMITS.paragraph ||
  (source.match(/[*_~`[]/g)?.length ?? 0) > BANK_LIMITS.emphasisSigns;
