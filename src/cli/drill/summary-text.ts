import type { Summary } from '../../practice/index.ts';
import { tellIdea } from '../../questions/index.ts';
import { comingBack } from '../../words/coming-back.ts';
import type { Words } from '../../words/index.ts';
import type { Io } from '../io.ts';
import { styleFor, wrapText } from '../style.ts';

/** Skills named one by one at the end of a practice; the rest are counted. */
const NAMED = 8;

/** Up to a day is told in hours. */
const HOURS = 24;

/** What a practice came to: what went well, what didn't, and what comes back when. */
export function summaryText(summary: Summary, answered: number, words: Words, io: Io): string {
  const { summary: said } = io.words.drill;
  const style = styleFor(io);
  if (answered === 0) return said.nothingAnswered;
  const { skills, ideas, returns } = summary;
  const well = skills.filter(({ asked, right }) => right === asked);
  const work = skills.filter(({ asked, right }) => right < asked);
  const row = ({ title, asked, right, held }: (typeof skills)[number]): string => {
    const skill = { title, right, of: asked };
    return wrapText(`  ${held ? said.skillHeld(skill) : said.skill(skill)}`, io.columns, '    ');
  };
  const lines = [style.strong(said.answered(answered))];
  if (well.length > 0) lines.push('', style.strong(said.wentWell), ...well.map(row));
  if (work.length > 0) lines.push('', style.strong(said.needsWork), ...work.map(row));
  if (ideas.length > 0) {
    lines.push('', style.strong(said.ideas));
    for (const { id, times } of ideas) {
      const { idea, advice } = tellIdea(words, id);
      const told = times > 1 ? said.ideaOften({ idea, advice, times }) : said.idea({ idea, advice });
      lines.push(wrapText(`  ${told}`, io.columns, '    '));
    }
  }
  const now = io.now();
  lines.push('', style.strong(said.comesBack));
  const whenOf = (due: number): string => {
    const [unit, count] = comingBack(due - now, HOURS);
    return io.words.comingBack[unit](count);
  };
  for (const { title, due } of returns.slice(0, NAMED))
    lines.push(`  ${said.returns({ title, when: whenOf(due) })}`);
  if (returns.length > NAMED)
    lines.push(`  ${said.moreReturn({ count: returns.length - NAMED, last: whenOf(returns.at(-1)!.due) })}`);
  return lines.join('\n');
}
