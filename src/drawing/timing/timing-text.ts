/** The timing diagram for a terminal: a row of characters for each device that changes, over the same axis. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Words } from '../../words/index.ts';
import { wrapText } from '../layout/wrap.ts';
import { plainLetters, type Rename } from '../letters.ts';
import { type Scale, scaleOf } from './scale.ts';
import { type Change, type Level, nameOf, signalsOf } from './signals.ts';

export interface TimingTextOptions {
  /** Width of the terminal in characters; at least 40 are used. */
  readonly columns: number;
  /** Nothing but ASCII characters. */
  readonly ascii?: boolean;
  readonly rename?: Rename;
}

/** Characters between two moments, and between the times under the axis. */
const SPACING = { apart: 1, even: 3, stretched: 2 };

interface Pen {
  readonly low: string;
  readonly half: string;
  readonly high: string;
  /** Higher and lower within one character. */
  readonly both: string;
  readonly axis: string;
  readonly tick: string;
}
const PEN: Pen = { low: '▁', half: '▒', high: '█', both: '▌', axis: '─', tick: '┴' };
const ASCII_PEN: Pen = { low: '_', half: '~', high: '#', both: '|', axis: '-', tick: '+' };

const signOf = (level: Level, pen: Pen): string =>
  level === 1 ? pen.high : level === 0 ? pen.low : pen.half;

/** A line of characters: each shows what held in its time, or that it was both. */
function rowOf(changes: readonly Change[], scale: Scale, from: number, columns: number, pen: Pen): string {
  const [first] = changes;
  let row = signOf(first?.level ?? 0, pen).repeat(columns);
  let before: { readonly at: number; readonly level: Level } = { at: 0, level: first?.level ?? 0 };
  for (const { ms, level } of changes.slice(1)) {
    const at = Math.min(columns - 1, Math.round(scale.x(ms)) - from);
    // Up and down again in the time of one character: a pulse that has to be seen.
    const pulse = at === before.at && before.level !== level && row[at] !== signOf(before.level, pen);
    const sign = pulse || (at === before.at && row[at] === pen.both) ? pen.both : signOf(level, pen);
    row = row.slice(0, at) + sign + signOf(level, pen).repeat(columns - at - 1);
    before = { at, level };
  }
  return row;
}

/** Texts with their middles at their places on one line, none over another. */
function placedTexts(
  texts: readonly { readonly x: number; readonly text: string }[],
  columns: number,
): string {
  let line = '';
  for (const { x, text } of texts) {
    const at = Math.max(0, Math.round(x - (text.length - 1) / 2));
    if ((line === '' || at > line.length) && at + text.length <= columns) line = line.padEnd(at) + text;
  }
  return line;
}

/** A circuit in which nothing changes has only the axis and the acts. */
export function timingText(
  words: Pick<Words, 'drawing'>,
  circuit: Circuit,
  scenario: Scenario,
  options: TimingTextOptions,
): string {
  const { timing } = words.drawing;
  const columns = Math.max(40, options.columns);
  const pen = options.ascii ? ASCII_PEN : PEN;
  const signals = signalsOf(circuit, scenario, options.rename ?? plainLetters);
  const names = Math.max(4, ...signals.signals.map((signal) => nameOf(words, signal).length));
  const left = names + 2;
  const moments = signals.signals.flatMap(({ changes }) => changes.map(({ ms }) => ms));
  const acts = signals.acts.map(({ ms }) => ms);
  const written = { text: timing.moment, width: (text: string) => text.length };
  const scale = scaleOf([...moments, signals.end], acts, left, columns - 1, written, SPACING);
  const axis = [...pen.axis.repeat(columns - left)];
  for (const { x } of scale.ticks) if (Math.round(x) < columns) axis[Math.round(x) - left] = pen.tick;
  // A number that has no room beside the one before is left out; below, every act has its time.
  const numbers = placedTexts(
    signals.acts.map(({ ms }, index) => ({ x: scale.x(ms), text: String(index + 1) })),
    columns,
  );
  const told = signals.acts.map(({ ms, act }, index) =>
    timing.act({ number: index + 1, at: timing.moment(ms), act }),
  );
  return [
    ...(signals.acts.length > 0 ? [numbers] : []),
    ...signals.signals.map(
      (signal) =>
        `${nameOf(words, signal).padEnd(left)}${rowOf(signal.changes, scale, left, columns - left, pen)}`,
    ),
    `${' '.repeat(left)}${axis.join('')}`,
    placedTexts(scale.ticks, columns),
    '',
    ...told.flatMap((text) => wrapText(text, columns, (piece) => piece.length)),
    ...(scale.even || signals.end === 0 ? [] : [timing.stretched]),
    ...wrapText(timing.legend(pen), columns, (piece) => piece.length),
  ].join('\n');
}
