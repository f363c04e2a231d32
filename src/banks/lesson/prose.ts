/** What of Markdown a lesson may have: little enough to look right on a page, in print and in a terminal. */
import type { MarkedToken, Token } from 'marked';
import type { BankCode } from '../problem-codes.ts';
import type { BankReport } from '../report.ts';
import type { Spot } from '../source.ts';
import type { MarkdownBlock } from './markdown.ts';

/** A link to another topic, `changeover-pole.md`. */
export interface TopicLink {
  readonly topic: string;
  readonly spot: Spot;
}

type Refusal = readonly [code: BankCode, message: string, hint: string];

const REFUSED: Readonly<Record<string, Refusal>> = {
  html: [
    'bank-html',
    'A lesson has no HTML.',
    'Write it in Markdown; a sign < before a letter is written \\<.',
  ],
  image: ['bank-markdown', 'A lesson has no pictures.', 'Draw it with a circuit block: ```circuit id=….'],
  code: [
    'bank-block-place',
    'A block stands by itself, not indented and not in a list or a quote.',
    'Put it between two paragraphs, its fence at the beginning of the line.',
  ],
  heading: [
    'bank-heading',
    'A heading stands by itself, not in a list or a quote.',
    'Put it at the beginning of a line.',
  ],
  table: [
    'bank-markdown',
    'A table stands by itself, not in a list or a quote.',
    'Put it between two paragraphs.',
  ],
  hr: ['bank-markdown', 'A lesson has no rules across it.', 'Begin a new part with a heading: ## Title.'],
  def: [
    'bank-markdown',
    'Addresses of links stand where the link is.',
    'Write [text](https://example.org/) or [text](other-topic.md).',
  ],
  del: ['bank-markdown', 'A lesson has no struck out text.', 'Leave it out.'],
  br: ['bank-markdown', 'A lesson has no forced line ends.', 'Begin a new paragraph with an empty line.'],
  checkbox: ['bank-markdown', 'A lesson has no boxes to tick.', 'Begin the item with its text.'],
};

/** Blocks that are text when they stand by themselves. */
const TEXT_BLOCKS: ReadonlySet<string> = new Set(['paragraph', 'list', 'blockquote', 'table', 'text']);
const ALLOWED_INSIDE: ReadonlySet<string> = new Set([
  ...['paragraph', 'list', 'list_item', 'blockquote', 'text', 'space'],
  ...['strong', 'em', 'codespan', 'escape', 'link'],
]);

export const isText = ({ token }: MarkdownBlock): boolean => TEXT_BLOCKS.has(token.type);

/** Reports everything in a block of text, or in a heading, that a lesson doesn't have; gives the links to other topics. */
export function checkProse(block: MarkdownBlock, report: BankReport): readonly TopicLink[] {
  const links: TopicLink[] = [];
  const find = finder(block);
  const visit = (token: Token): void => {
    const spot = find(token.raw);
    if (!ALLOWED_INSIDE.has(token.type)) refuse(token.type, spot, report);
    else if (token.type === 'link') {
      const topic = checkLink((token as Extract<MarkedToken, { type: 'link' }>).href, spot, report);
      if (topic !== undefined) links.push({ topic, spot });
    }
    if (token.type !== 'image' && token.type !== 'code') for (const child of childrenOf(token)) visit(child);
  };
  for (const child of childrenOf(block.token)) visit(child);
  return links;
}

/** Reports a block that a lesson doesn't have at all. */
export function refuseBlock({ token, source }: MarkdownBlock, report: BankReport): void {
  refuse(token.type, { line: source.first, column: 1 }, report);
}

function refuse(type: string, spot: Spot, report: BankReport): void {
  const [code, message, hint] = REFUSED[type] ?? [
    'bank-markdown',
    'A lesson has nothing of this kind.',
    'It has paragraphs, lists, quotes, tables, headings, *emphasis*, `terminals` and links.',
  ];
  report.add(code, spot, message, hint);
}

/** The topic a link leads to, where it leads to one; what is no topic and no https address is reported. */
function checkLink(href: string, spot: Spot, report: BankReport): string | undefined {
  const topic = /^([a-z0-9-]{1,64})\.md$/.exec(href)?.[1];
  if (topic !== undefined || /^https:\/\/[a-z0-9]/i.test(href)) return topic;
  report.add(
    'bank-link',
    spot,
    'This link leads neither to a topic nor to an https address.',
    'Write [text](other-topic.md) or [text](https://example.org/).',
  );
  return undefined;
}

function childrenOf(token: Token): readonly Token[] {
  const whole = token as MarkedToken;
  if (whole.type === 'list') return whole.items;
  if (whole.type === 'table') return [...whole.header, ...whole.rows.flat()].flatMap(({ tokens }) => tokens);
  return (token as { tokens?: readonly Token[] }).tokens ?? [];
}

/** Finds the pieces of a block one after the other, as they come: where the next place is that begins like this. */
function finder({ source: { first, lines } }: MarkdownBlock): (raw: string) => Spot {
  let [line, column] = [0, 0];
  return (raw) => {
    const start = raw.trim().split('\n')[0]!;
    for (let at = line; start !== '' && at < lines.length; at++) {
      const found = lines[at]!.indexOf(start, at === line ? column : 0);
      if (found < 0) continue;
      [line, column] = [at, found];
      break;
    }
    return { line: first + line, column: column + 1 };
  };
}
