/** The timing diagram of a scenario: a line for each device that changes, over a time axis, with the acts marked. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Words } from '../../words/index.ts';
import type { Width } from '../layout/graphic-profile.ts';
import { letterHeight, letterWidth } from '../layout/lettering.ts';
import { plainLetters, type Rename } from '../letters.ts';
import { round } from '../picture/shapes.ts';
import type { Picture } from '../picture/types.ts';
import { DiagramSheet, RISE } from './diagram-sheet.ts';
import { drawKey } from './key.ts';
import { type Level, nameOf, type Signal, type Signals } from './lines.ts';
import { type Scale, scaleOf } from './scale.ts';
import { signalsOf } from './signals.ts';

const WIDTH: Readonly<Record<Width, number>> = { phone: 360, screen: 1000, a4: 1040 };
const MARGIN = 10;
const ROW = 28;

/** A line with its edges; where time is cut it is interrupted. */
function drawSignal(sheet: DiagramSheet, { changes }: Signal, low: number, scale: Scale): void {
  const yOf = (level: Level): number => low - RISE * level;
  let edges = '';
  changes.forEach(({ at, level }, index) => {
    const next = changes[index + 1];
    const start = index === 0 ? scale.from : scale.x[at]!;
    const end = next ? scale.x[next.since ?? next.at]! : scale.to;
    sheet.line(level, start, end, yOf(level), sheet.cutsIn(scale, start, end));
    if (!next) return;
    // Upright where it follows at once, aslant where contacts are on their way.
    edges += `M${round(end)} ${round(yOf(level))}L${round(scale.x[next.at]!)} ${round(yOf(next.level))}`;
  });
  sheet.shape('wire', edges);
}

function drawAxis(sheet: DiagramSheet, scale: Scale, y: number): void {
  const { x, gaps, from, to, ticks } = scale;
  const ends = [from, ...x, to];
  let line = '';
  let dotted = '';
  for (let index = 0; index + 1 < ends.length; index++) {
    const [start, end] = [ends[index]!, ends[index + 1]!];
    const gap = gaps[index - 1];
    if (gap === 'order') dotted += `M${round(start)} ${round(y)}H${round(end)}`;
    else line += sheet.interrupted(start, end, y, gap === 'cut' ? [(start + end) / 2] : []);
  }
  sheet.shape('frame', line);
  sheet.shape('dashed', dotted);
  sheet.shape('frame', ticks.map((tick) => `M${round(tick.x)} ${round(y)}v4`).join(''));
  for (const { text, textAt } of ticks) sheet.text('place', text, textAt, y + 16, 'middle');
}

/** Acts are numbered over the lines and told below: their words would not fit beside each other. */
function drawActs(sheet: DiagramSheet, { acts }: Signals, scale: Scale, top: number, bottom: number): void {
  const shown: { x: number; numbers: number[] }[] = [];
  acts.forEach(({ at }, index) => {
    const x = scale.x[at]!;
    const last = shown.at(-1);
    if (last && x - last.x < 14) last.numbers.push(index + 1);
    else shown.push({ x, numbers: [index + 1] });
  });
  sheet.shape(
    'dashed',
    acts.map(({ at }) => `M${round(scale.x[at]!)} ${round(top)}V${round(bottom)}`).join(''),
  );
  for (const { x, numbers } of shown) sheet.text('path', numbers.join(' '), x, top - 4, 'middle');
}

export interface TimingOptions {
  readonly width?: Width;
  readonly rename?: Rename;
  /** With the milliseconds that relays take to operate and release, and their contacts on their way. */
  readonly operateTimes?: boolean;
}

/** Nothing changes: only the axis and the acts. */
export function timingPicture(
  words: Pick<Words, 'drawing'>,
  circuit: Circuit,
  scenario: Scenario,
  options: TimingOptions = {},
): Picture {
  const { rename = plainLetters, operateTimes = false } = options;
  const signals = signalsOf(circuit, scenario, rename, operateTimes);
  const width = WIDTH[options.width ?? 'screen'];
  const sheet = new DiagramSheet();
  const names = Math.max(40, ...signals.signals.map((signal) => letterWidth(nameOf(words, signal), 'name')));
  const left = MARGIN + names + 10;
  const right = width - MARGIN;
  const scale = scaleOf(signals.moments, left, right, {
    text: words.drawing.timing.moment,
    width: (text) => letterWidth(text, 'place'),
  });
  const top = MARGIN + letterHeight('path') + 4;
  const bottom = top + signals.signals.length * ROW + 6;
  drawActs(sheet, signals, scale, top, bottom);
  signals.signals.forEach((signal, index) => {
    const low = top + (index + 1) * ROW - 4;
    sheet.text('name', nameOf(words, signal), MARGIN, low - 3, 'start');
    drawSignal(sheet, signal, low, scale);
  });
  drawAxis(sheet, scale, bottom);
  const height = drawKey(sheet, words, signals, scale, { left: MARGIN, right, from: bottom + 24 });
  return { width, height: Math.ceil(height + MARGIN), items: sheet.items };
}
