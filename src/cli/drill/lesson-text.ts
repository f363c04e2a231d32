import type { LessonFor } from '../../practice/index.ts';
import type { Io } from '../io.ts';
import { styleFor, wrapText } from '../style.ts';

/** What marks a text up in a lesson stays out: a terminal reads it aloud. */
const plain = (text: string): string =>
  text
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/\\([<*_`])/g, '$1')
    .replace(/\*\*|`/g, '')
    .replace(/(^|[\s(])[*_](\S(?:[^*_\n]*\S)?)[*_](?=$|[\s.,;:)!?])/gm, '$1$2');

/** One block of a text as lines: an item of a list each for itself, of a quote what it says, a table as it is. */
function blockLines(block: string, columns: number): readonly string[] {
  const lines = block.split('\n');
  if (lines.every((line) => line.startsWith('|')))
    return lines.filter((line) => !/^[|\s:-]+$/.test(line)).map((line) => `  ${plain(line)}`);
  const items = block.replace(/^> ?/gm, '').split(/\n(?=(?:[-*]|\d+\.) )/);
  return items.map((item) => {
    const isItem = /^(?:[-*]|\d+\.) /.test(item);
    return wrapText(`  ${plain(item.replace(/\s*\n\s*/g, ' '))}`, columns, isItem ? '    ' : '  ');
  });
}

/** The part of a lesson that helps where a skill went wrong twice in a row; its drawings stand on the page. */
export function lessonText({ topic, section }: LessonFor, io: Io): string {
  const { lesson: said } = io.words.drill;
  const blocks = section.parts.flatMap((part) =>
    part.kind === 'text' ? part.markdown.trim().split(/\n\s*\n/) : [],
  );
  const title = said.from({ lesson: topic.title, section: section.title });
  return [
    styleFor(io).strong(wrapText(said.helps, io.columns)),
    styleFor(io).strong(title),
    ...blocks.flatMap((block) => ['', ...blockLines(block, io.columns)]),
    '',
    wrapText(said.smaller, io.columns),
  ].join('\n');
}
