/** The timing diagram of a scenario: a line for each device that changes, over a time axis, with the acts marked. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Words } from '../../words/index.ts';
import type { Width } from '../layout/graphic-profile.ts';
import { LETTER_SIZE, letterHeight, letterWidth } from '../layout/lettering.ts';
import { wrapText } from '../layout/wrap.ts';
import { plainLetters, type Rename } from '../letters.ts';
import { round } from '../picture/shapes.ts';
import type { Ink, Lettering, Picture, Shape } from '../picture/types.ts';
import type { TextRole } from '../scene/types.ts';
import { type Scale, scaleOf } from './scale.ts';
import { type Change, type Level, nameOf, type Signals, signalsOf } from './signals.ts';

const WIDTH: Readonly<Record<Width, number>> = { phone: 360, screen: 1000, a4: 1040 };
const MARGIN = 10;
const ROW = 28;
/** Height of a high line over a low one. */
const RISE = 14;

class Sheet {
  readonly items: (Shape | Lettering)[] = [];

  shape(ink: Ink, d: string): void {
    if (d) this.items.push({ kind: 'shape', ink, d });
  }

  text(role: TextRole, text: string, x: number, baseline: number, anchor: Lettering['anchor']): void {
    this.items.push({ kind: 'text', role, text, x, baseline, size: LETTER_SIZE[role], anchor });
  }
}

/** Pieces of a line at one level, from one change to the next. */
function piecesOf(changes: readonly Change[], end: number): { from: number; to: number; level: Level }[] {
  return changes.map(({ ms, level }, index) => ({ from: ms, to: changes[index + 1]?.ms ?? end, level }));
}

function drawSignal(
  sheet: Sheet,
  changes: readonly Change[],
  low: number,
  scale: Scale,
  right: number,
): void {
  const yOf = (level: Level): number => low - RISE * level;
  const path: Record<'high' | 'low' | 'half' | 'edges', string> = { high: '', low: '', half: '', edges: '' };
  let before: Level | undefined;
  for (const { from, to, level } of piecesOf(changes, Number.POSITIVE_INFINITY)) {
    const [left, end] = [scale.x(from), Number.isFinite(to) ? scale.x(to) : right];
    const key = level === 1 ? 'high' : level === 0 ? 'low' : 'half';
    path[key] += `M${round(left)} ${round(yOf(level))}H${round(end)}`;
    if (before !== undefined && before !== level)
      path.edges += `M${round(left)} ${round(yOf(before))}V${round(yOf(level))}`;
    before = level;
  }
  sheet.shape('wire', path.low + path.edges);
  sheet.shape('dashed', path.half);
  sheet.shape('live', path.high);
}

function drawAxis(sheet: Sheet, scale: Scale, left: number, right: number, y: number): void {
  sheet.shape('frame', `M${round(left)} ${round(y)}H${round(right)}`);
  sheet.shape('frame', scale.ticks.map(({ x }) => `M${round(x)} ${round(y)}v4`).join(''));
  for (const { x, text } of scale.ticks)
    if (x + letterWidth(text, 'place') / 2 <= right) sheet.text('place', text, x, y + 16, 'middle');
}

/** Acts are numbered over the lines and told below: their words would not fit beside each other. */
function drawActs(sheet: Sheet, { acts }: Signals, scale: Scale, top: number, bottom: number): void {
  const shown: { x: number; numbers: number[] }[] = [];
  acts.forEach(({ ms }, index) => {
    const x = scale.x(ms);
    const last = shown[shown.length - 1];
    if (last && x - last.x < 14) last.numbers.push(index + 1);
    else shown.push({ x, numbers: [index + 1] });
  });
  sheet.shape(
    'dashed',
    acts.map(({ ms }) => `M${round(scale.x(ms))} ${round(top)}V${round(bottom)}`).join(''),
  );
  for (const { x, numbers } of shown) sheet.text('path', numbers.join(' '), x, top - 4, 'middle');
}

function drawLegend(
  sheet: Sheet,
  { drawing: { timing } }: Pick<Words, 'drawing'>,
  { acts }: Signals,
  scale: Scale,
  left: number,
  right: number,
  from: number,
): number {
  let y = from;
  const line = letterHeight('text') + 2;
  acts.forEach(({ ms, act }, index) => {
    const text = timing.act({ number: index + 1, at: timing.moment(ms), act });
    for (const part of wrapText(text, right - left, (piece) => letterWidth(piece, 'text'))) {
      y += line;
      sheet.text('text', part, left, y, 'start');
    }
  });
  if (!scale.even) {
    y += line;
    sheet.text('place', timing.stretched, left, y, 'start');
  }
  return y + 6;
}

export interface TimingOptions {
  readonly width?: Width;
  readonly rename?: Rename;
}

/** Nothing changes: only the axis and the acts. */
export function timingPicture(
  words: Pick<Words, 'drawing'>,
  circuit: Circuit,
  scenario: Scenario,
  options: TimingOptions = {},
): Picture {
  const signals = signalsOf(circuit, scenario, options.rename ?? plainLetters);
  const width = WIDTH[options.width ?? 'screen'];
  const sheet = new Sheet();
  const names = Math.max(40, ...signals.signals.map((signal) => letterWidth(nameOf(words, signal), 'name')));
  const left = MARGIN + names + 10;
  const right = width - MARGIN;
  const moments = signals.signals.flatMap(({ changes }) => changes.map(({ ms }) => ms));
  const acts = signals.acts.map(({ ms }) => ms);
  const scale = scaleOf([...moments, signals.end], acts, left, right, {
    text: words.drawing.timing.moment,
    width: (text) => letterWidth(text, 'place'),
  });
  const top = MARGIN + letterHeight('path') + 4;
  const bottom = top + signals.signals.length * ROW + 6;
  drawActs(sheet, signals, scale, top, bottom);
  signals.signals.forEach((signal, index) => {
    const { changes } = signal;
    const low = top + (index + 1) * ROW - 4;
    sheet.text('name', nameOf(words, signal), MARGIN, low - 3, 'start');
    drawSignal(sheet, [{ ms: 0, level: changes[0]?.level ?? 0 }, ...changes.slice(1)], low, scale, right);
  });
  drawAxis(sheet, scale, left, right, bottom);
  const height = drawLegend(sheet, words, signals, scale, MARGIN, right, bottom + 24);
  return { width, height: Math.ceil(height + MARGIN), items: sheet.items };
}
