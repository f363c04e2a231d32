/** What of Markdown a lesson may have: little enough to look right on a page, in print and in a terminal. */
import type { MarkedToken, Token } from 'marked';
import type { BankProblemSaid } from '../../words/index.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';
import type { MarkdownBlock } from './markdown.ts';

/** A link to another topic, `changeover-pole.md`. */
export interface TopicLink {
  readonly topic: string;
  readonly position: Position;
}

/** What is said of each kind of token that a lesson doesn't have. */
const REFUSED: Readonly<Record<string, BankProblemSaid>> = {
  html: { says: 'bank-html' },
  image: { says: 'bank-markdown.image' },
  code: { says: 'bank-block-place' },
  heading: { says: 'bank-heading.inside' },
  table: { says: 'bank-markdown.table' },
  hr: { says: 'bank-markdown.rule' },
  def: { says: 'bank-markdown.definition' },
  del: { says: 'bank-markdown.struckOut' },
  br: { says: 'bank-markdown.lineEnd' },
  checkbox: { says: 'bank-markdown.checkbox' },
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
    const position = find(token.raw);
    if (!ALLOWED_INSIDE.has(token.type)) refuse(token.type, position, report);
    else if (token.type === 'link') {
      const topic = checkLink((token as Extract<MarkedToken, { type: 'link' }>).href, position, report);
      if (topic !== undefined) links.push({ topic, position });
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

function refuse(type: string, position: Position, report: BankReport): void {
  report.add(REFUSED[type] ?? { says: 'bank-markdown' }, position);
}

/** The topic a link leads to, where it leads to one; what is no topic and no https address is reported. */
function checkLink(href: string, position: Position, report: BankReport): string | undefined {
  const topic = /^([a-z0-9-]{1,64})\.md$/.exec(href)?.[1];
  if (topic !== undefined || /^https:\/\/[a-z0-9]/i.test(href)) return topic;
  report.add({ says: 'bank-link.address' }, position);
  return undefined;
}

function childrenOf(token: Token): readonly Token[] {
  const whole = token as MarkedToken;
  if (whole.type === 'list') return whole.items;
  if (whole.type === 'table') return [...whole.header, ...whole.rows.flat()].flatMap(({ tokens }) => tokens);
  return (token as { tokens?: readonly Token[] }).tokens ?? [];
}

/** Finds the pieces of a block one after the other, as they come: where the next place is that begins like this. */
function finder({ source: { first, lines } }: MarkdownBlock): (raw: string) => Position {
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
