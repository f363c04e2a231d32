/** The lesson under its headings, and everything its blocks make. */
import type { LessonPart, LessonSection } from '../../../shared/bank.ts';
import { readCircuitBlock } from '../blocks/circuit-block.ts';
import { readDrawingBlock } from '../blocks/drawing-block.ts';
import { type Block, readBlock } from '../blocks/head.ts';
import { readQuestionBlock } from '../blocks/question-block.ts';
import { newTopicBlocks, type TopicBlocks } from '../blocks/topic-blocks.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';
import type { Lines } from '../source.ts';
import { type MarkdownBlock, readMarkdown } from './markdown.ts';
import { checkProse, isText, refuseBlock, type TopicLink } from './prose.ts';

const LONGEST_TITLE = 120;

export interface ReadLesson {
  readonly sections: readonly LessonSection[];
  readonly blocks: TopicBlocks;
  readonly links: readonly TopicLink[];
}

interface Section extends LessonSection {
  readonly parts: LessonPart[];
  readonly position: Position;
}

/** Reads the lesson; undefined when it is too large to be read. Every mistake is reported. */
export function readLesson(lines: Lines, report: BankReport): ReadLesson | undefined {
  const markdown = readMarkdown(lines, report);
  if (!markdown) return undefined;
  const blocks = newTopicBlocks();
  const links: TopicLink[] = [];
  const sections: Section[] = [];
  const current = (): Section => {
    if (sections.length === 0)
      sections.push({ title: null, depth: 2, parts: [], position: { line: lines.first, column: 1 } });
    return sections.at(-1)!;
  };
  for (const block of markdown) {
    const { token, source } = block;
    if (token.type === 'space') continue;
    if (token.type === 'heading') {
      links.push(...checkProse(block, report));
      sections.push(newSection(token.text, token.depth, { line: source.first, column: 1 }, sections, report));
    } else if (isText(block)) {
      links.push(...checkProse(block, report));
      addText(current().parts, textOf(block));
    } else if (token.type === 'code' && token.codeBlockStyle !== 'indented') {
      const fenced = readBlock(source, report);
      const part = fenced && readFenced(fenced, blocks, report);
      if (part) current().parts.push(part);
    } else refuseBlock(block, report);
  }
  reportEmpty(sections, report);
  return { sections: sections.map(({ position: _, ...section }) => section), blocks, links };
}

function readFenced(block: Block, blocks: TopicBlocks, report: BankReport): LessonPart | undefined {
  switch (block.head.kind) {
    case 'circuit':
      return readCircuitBlock(block, blocks, report);
    case 'drawing':
      return readDrawingBlock(block, blocks, report);
    case 'question':
      return readQuestionBlock(block, blocks, report);
  }
}

function newSection(
  title: string,
  depth: number,
  position: Position,
  before: readonly Section[],
  report: BankReport,
): Section {
  if (title.length === 0 || title.length > LONGEST_TITLE)
    report.add({ says: 'bank-heading.length', most: LONGEST_TITLE }, position);
  if (depth !== 2 && depth !== 3) report.add({ says: 'bank-heading.depth' }, position);
  if (depth === 3 && !before.some((section) => section.title !== null))
    report.add({ says: 'bank-heading.first' }, position);
  return { title, depth: depth === 3 ? 3 : 2, parts: [], position };
}

const textOf = ({ source }: MarkdownBlock): string =>
  source.lines
    .map((line) => line.trimEnd())
    .join('\n')
    .replace(/^\n+|\n+$/g, '');

/** Paragraphs that follow one another are one part. */
function addText(parts: LessonPart[], markdown: string): void {
  const last = parts.at(-1);
  if (last?.kind === 'text')
    parts[parts.length - 1] = { kind: 'text', markdown: `${last.markdown}\n\n${markdown}` };
  else parts.push({ kind: 'text', markdown });
}

/** A section with parts of its own under it needs nothing directly under its heading. */
function reportEmpty(sections: readonly Section[], report: BankReport): void {
  sections.forEach(({ parts, depth, position }, index) => {
    const next = sections[index + 1];
    // Where a block was refused, a heading may only seem to stand alone.
    if (parts.length > 0 || !report.clean || (next !== undefined && next.depth > depth)) return;
    report.add({ says: 'bank-heading' }, position);
  });
}
