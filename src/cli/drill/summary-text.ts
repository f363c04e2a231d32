import type { Summary } from '../../practice/index.ts';
import type { Io } from '../io.ts';
import { styleFor, wrapText } from '../style.ts';
import { whenInWords } from '../when.ts';

/** Skills named one by one at the end of a practice; the rest are counted. */
const NAMED = 8;

/** What a practice came to: what went well, what didn't, and what comes back when. */
export function summaryText(summary: Summary, answered: number, io: Io): string {
  const style = styleFor(io);
  if (answered === 0) return 'No question was answered. What was kept before is still there.';
  const { skills, ideas, returns } = summary;
  const well = skills.filter(({ asked, right }) => right === asked);
  const work = skills.filter(({ asked, right }) => right < asked);
  const row = ({ title, asked, right, held }: (typeof skills)[number]): string =>
    wrapText(`  ${title}: ${right} of ${asked} right${held ? ', held' : ''}`, io.columns, '    ');
  const lines = [
    style.strong(
      answered === 1 ? '1 question answered and kept.' : `${answered} questions answered and kept.`,
    ),
  ];
  if (well.length > 0) lines.push('', style.strong('Went well'), ...well.map(row));
  if (work.length > 0) lines.push('', style.strong('Needs work'), ...work.map(row));
  if (ideas.length > 0) {
    lines.push('', style.strong('Ideas to be rid of'));
    for (const { idea, advice, times } of ideas) {
      lines.push(wrapText(`  ${idea}${times > 1 ? ` (${times} times)` : ''} ${advice}`, io.columns, '    '));
    }
  }
  const now = io.now();
  lines.push('', style.strong('Comes back'));
  for (const { title, due } of returns.slice(0, NAMED)) lines.push(`  ${title}: ${whenInWords(due, now)}`);
  if (returns.length > NAMED)
    lines.push(`  and ${returns.length - NAMED} more, the last ${whenInWords(returns.at(-1)!.due, now)}`);
  return lines.join('\n');
}
