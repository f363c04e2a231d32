import type { ToldMark } from '../../shared/question.ts';
import type { Io } from './io.ts';
import { styleFor, wrapText } from './style.ts';

/** A mark as it is read in a terminal: part by part, the wrong idea behind it, why the right answer is right, and what happens. */
export function markText(mark: ToldMark, io: Pick<Io, 'colour' | 'columns' | 'words'>): string {
  const { marks: said } = io.words;
  const style = styleFor(io);
  const right = mark.parts.filter(({ correct }) => correct).length;
  const whole = mark.parts.length;
  const left = mark.parts.filter(({ given }) => given === undefined).length;
  const head = mark.correct
    ? style.good(said.right)
    : left === whole
      ? said.leftOut
      : style.bad(whole === 1 ? said.notRight : said.partlyRight({ right, of: whole }));
  const width = Math.max(...mark.parts.map(({ item }) => item.length));
  const signs = Math.max(...Object.values(said.parts).map((sign) => sign.length));
  const parts = mark.parts.map(({ item, given, right: wanted, correct }) => {
    const told = correct || given === undefined ? wanted : said.youSaid({ right: wanted, given });
    const sign = correct
      ? style.good(said.parts.right.padEnd(signs))
      : given === undefined
        ? said.parts.leftOut.padEnd(signs)
        : style.bad(said.parts.wrong.padEnd(signs));
    return `  ${sign}  ${item.padEnd(width)}  ${told}`;
  });
  const { decides, story } = mark.explanation;
  const line = (text: string, inwards = ''): string =>
    wrapText(`${inwards}  ${text}`, io.columns, `${inwards}    `);
  const why = decides.flatMap(({ text, behind }) => [
    line(text),
    ...behind.map((step) => style.quiet(line(step.text, '  '))),
  ]);
  // Whoever had it right doesn't need all that happened.
  const happened =
    mark.correct || story.length === 0
      ? []
      : ['', style.strong(said.story), ...story.map(({ text }) => line(text))];
  const ideas = mark.misconceptions.flatMap(({ idea, advice }) => [
    wrapText(`  ${style.note(idea)}`, io.columns, '  '),
    wrapText(`  ${advice}`, io.columns, '  '),
  ]);
  return [
    head,
    ...(mark.correct && whole === 1 ? [] : parts),
    ...(ideas.length > 0
      ? ['', style.strong(mark.misconceptions.length > 1 ? said.ideas : said.idea), ...ideas]
      : []),
    '',
    style.strong(said.why),
    ...why,
    ...happened,
  ].join('\n');
}
