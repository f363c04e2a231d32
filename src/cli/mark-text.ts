import type { Mark } from '../../shared/question.ts';
import type { Io } from './io.ts';
import { styleFor, wrapText } from './style.ts';

/** A mark as it is read in a terminal: part by part, the wrong idea behind it, then why the right answer is right. */
export function markText(mark: Mark, io: Pick<Io, 'colour' | 'columns'>): string {
  const style = styleFor(io);
  const right = mark.parts.filter(({ correct }) => correct).length;
  const whole = mark.parts.length;
  const left = mark.parts.filter(({ given }) => given === undefined).length;
  const head = mark.correct
    ? style.good('Right.')
    : left === whole
      ? 'Left out. This is right:'
      : style.bad(whole === 1 ? 'Not right.' : `${right} of ${whole} right.`);
  const width = Math.max(...mark.parts.map(({ item }) => item.length));
  const parts = mark.parts.map(({ item, given, right: wanted, correct }) => {
    const told = correct || given === undefined ? wanted : `${wanted}, you said ${given}`;
    const sign = correct ? style.good('right   ') : given === undefined ? 'left out' : style.bad('wrong   ');
    return `  ${sign}  ${item.padEnd(width)}  ${told}`;
  });
  const steps = mark.explanation.map(({ text }) => wrapText(`  ${text}`, io.columns, '    '));
  const ideas = mark.misconceptions.flatMap(({ idea, advice }) => [
    wrapText(`  ${style.note(idea)}`, io.columns, '  '),
    wrapText(`  ${advice}`, io.columns, '  '),
  ]);
  const lead =
    mark.misconceptions.length > 1
      ? 'One of these ideas gives just this answer'
      : 'An idea that gives just this answer';
  return [
    head,
    ...(mark.correct && whole === 1 ? [] : parts),
    ...(ideas.length > 0 ? ['', style.strong(lead), ...ideas] : []),
    '',
    style.strong('Why'),
    ...steps,
  ].join('\n');
}
