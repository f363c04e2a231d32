/** The timing diagram for a terminal: a row of characters for each device that changes, over the same axis. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Words } from '../../words/index.ts';
import { wrapText } from '../layout/wrap.ts';
import { plainLetters, type Rename } from '../letters.ts';
import { type Change, type Level, nameOf } from './lines.ts';
import { type Scale, type Spacing, scaleOf } from './scale.ts';
import { signalsOf } from './signals.ts';

export interface TimingTextOptions {
  /** Width of the terminal in characters; at least 40 are used. */
  readonly columns: number;
  /** Nothing but ASCII characters. */
  readonly ascii?: boolean;
  readonly rename?: Rename;
  /** With the milliseconds that relays take to operate and release. */
  readonly operateTimes?: boolean;
}

const SPACING: Spacing = { apart: 2, order: 3, mostOrder: 12, cut: 6, beside: 3, texts: 2 };

interface Pen {
  readonly low: string;
  readonly between: string;
  readonly high: string;
  /** Higher and lower within one character. */
  readonly both: string;
  readonly axis: string;
  readonly tick: string;
  /** Where no time passes. */
  readonly order: string;
  readonly cut: string;
}
const PEN: Pen = {
  low: '▁',
  between: '▒',
  high: '█',
  both: '▌',
  axis: '─',
  tick: '┴',
  order: '·',
  cut: '//',
};
const ASCII_PEN: Pen = {
  low: '_',
  between: '~',
  high: '#',
  both: '|',
  axis: '-',
  tick: '+',
  order: '.',
  cut: '//',
};

const signOf = (level: Level, pen: Pen): string =>
  level === 1 ? pen.high : level === 0 ? pen.low : pen.between;

const put = (row: string, at: number, text: string): string =>
  row.slice(0, at) + text + row.slice(at + text.length);

/** Where the axis is interrupted, in characters from its beginning. */
const cutsOf = ({ x, gaps }: Scale, from: number): number[] =>
  gaps.flatMap((gap, index) =>
    gap === 'cut' ? [Math.round((x[index]! + x[index + 1]!) / 2) - from - 1] : [],
  );

/** A line of characters: each shows what held in its time, or that it was several things one after the other. */
function rowOf(changes: readonly Change[], scale: Scale, from: number, columns: number, pen: Pen): string {
  const [first, ...later] = changes;
  let row = signOf(first!.level, pen).repeat(columns);
  let before = -1;
  for (const { at, level } of later) {
    const column = Math.min(columns - 1, Math.round(scale.x[at]!) - from);
    // Up and down again in the time of one character: a pulse that has to be seen.
    const sign = column === before ? pen.both : signOf(level, pen);
    row = row.slice(0, column) + sign + signOf(level, pen).repeat(columns - column - 1);
    before = column;
  }
  for (const cut of cutsOf(scale, from)) row = put(row, cut, pen.cut);
  return row;
}

function axisOf(scale: Scale, from: number, columns: number, pen: Pen): string {
  const { x, gaps, ticks } = scale;
  let axis = pen.axis.repeat(columns);
  gaps.forEach((gap, index) => {
    const [start, end] = [Math.round(x[index]!) - from, Math.round(x[index + 1]!) - from];
    if (gap === 'order') axis = put(axis, start, pen.order.repeat(end - start));
  });
  for (const tick of ticks)
    if (Math.round(tick.x) - from < columns) axis = put(axis, Math.round(tick.x) - from, pen.tick);
  for (const cut of cutsOf(scale, from)) axis = put(axis, cut, pen.cut);
  return axis;
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

/** What the characters mean, as far as they are there. */
function keyOf(words: Words['drawing']['timing'], rows: readonly string[], scale: Scale, pen: Pen): string[] {
  const { key } = words;
  const entry = (sign: string, text: string): string => `${sign} ${text}`;
  return [
    entry(pen.high, key.high),
    entry(pen.low, key.low),
    ...(rows.some((row) => row.includes(pen.between)) ? [entry(pen.between, key.between)] : []),
    ...(rows.some((row) => row.includes(pen.both)) ? [entry(pen.both, key.both)] : []),
    ...(scale.gaps.includes('cut') ? [entry(pen.cut, key.cut)] : []),
    ...(scale.gaps.includes('order') ? [entry(pen.order, key.order)] : []),
  ];
}

/** Texts side by side as far as the lines reach. */
function filled(texts: readonly string[], columns: number): string[] {
  const lines: string[] = [];
  for (const text of texts) {
    const joined = `${lines.at(-1)}   ${text}`;
    if (lines.length > 0 && joined.length <= columns) lines[lines.length - 1] = joined;
    else lines.push(text);
  }
  return lines;
}

/** A circuit in which nothing changes has only the axis and the acts. */
export function timingText(
  words: Pick<Words, 'drawing'>,
  circuit: Circuit,
  scenario: Scenario,
  options: TimingTextOptions,
): string {
  const { timing } = words.drawing;
  const { rename = plainLetters, operateTimes = false } = options;
  const columns = Math.max(40, options.columns);
  const pen = options.ascii ? ASCII_PEN : PEN;
  const signals = signalsOf(circuit, scenario, rename, operateTimes);
  const names = Math.max(4, ...signals.signals.map((signal) => nameOf(words, signal).length));
  const left = names + 2;
  const written = { text: timing.moment, width: (text: string) => text.length };
  const scale = scaleOf(signals.moments, left, columns - 1, written, SPACING);
  const wide = Math.min(columns - left, Math.round(scale.to) - left + 1);
  const rows = signals.signals.map(({ changes }) => rowOf(changes, scale, left, wide, pen));
  // A number that has no room beside the one before is left out; below, every act has its time.
  const numbers = placedTexts(
    signals.acts.map(({ at }, index) => ({ x: scale.x[at]!, text: String(index + 1) })),
    columns,
  );
  const passes = scale.ticks.length > 0;
  const told = signals.acts.map(({ at, act }, index) =>
    timing.act({
      number: index + 1,
      ...(passes ? { at: timing.moment(signals.moments[at]!) } : {}),
      act,
    }),
  );
  const below = [
    ...told,
    '',
    ...filled(keyOf(timing, rows, scale, pen), columns),
    operateTimes || signals.operateTimes ? timing.withTimes : timing.withoutTimes,
  ];
  return [
    ...(signals.acts.length > 0 ? [numbers] : []),
    ...signals.signals.map((signal, index) => `${nameOf(words, signal).padEnd(left)}${rows[index]}`),
    `${' '.repeat(left)}${axisOf(scale, left, wide, pen)}`,
    ...(passes
      ? [
          placedTexts(
            scale.ticks.map(({ textAt, text }) => ({ x: textAt, text })),
            columns,
          ),
        ]
      : []),
    '',
    ...below.flatMap((text) =>
      text.length <= columns ? [text] : wrapText(text, columns, (piece) => piece.length),
    ),
  ].join('\n');
}
