/** What stands under a timing diagram: the acts in words, and what its lines and signs mean, each beside its sign. */

import type { Words } from '../../words/index.ts';
import { letterHeight, letterWidth } from '../layout/lettering.ts';
import { wrapText } from '../layout/wrap.ts';
import { round } from '../picture/shapes.ts';
import { type DiagramSheet, RISE } from './diagram-sheet.ts';
import type { Signals } from './lines.ts';
import type { Scale } from './scale.ts';

interface Place {
  readonly left: number;
  readonly right: number;
  readonly from: number;
}

/** Width of a sign before its words, and of the space after it. */
const SIGN = 26;
const AFTER = 8;
/** Between one sign with its words and the next. */
const BETWEEN = 22;

interface Entry {
  readonly text: string;
  readonly draw: (x: number, baseline: number) => void;
}

const isBetween = ({ signals }: Signals): boolean =>
  signals.some(({ changes }) => changes.some(({ level }) => level === 0.5));
const isSlanting = ({ signals }: Signals): boolean =>
  signals.some(({ changes }) => changes.some(({ since }) => since !== undefined));

/** Only what is in the diagram is explained. */
function entriesOf(sheet: DiagramSheet, words: Words['drawing'], signals: Signals, scale: Scale): Entry[] {
  const { key } = words.timing;
  const entries: Entry[] = [
    { text: key.high, draw: (x, y) => sheet.line(1, x, x + SIGN, y - 8) },
    { text: key.low, draw: (x, y) => sheet.line(0, x, x + SIGN, y - 1) },
  ];
  if (isBetween(signals))
    entries.push({ text: key.between, draw: (x, y) => sheet.line(0.5, x, x + SIGN, y - 4) });
  if (isSlanting(signals))
    entries.push({
      text: key.onItsWay,
      draw: (x, y) => sheet.shape('wire', `M${round(x)} ${round(y)}h8l10 ${-RISE + 4}h8`),
    });
  if (scale.gaps.includes('cut'))
    entries.push({ text: key.cut, draw: (x, y) => sheet.line(0, x, x + SIGN, y - 4, [x + SIGN / 2]) });
  if (scale.gaps.includes('order'))
    entries.push({
      text: key.order,
      draw: (x, y) => sheet.shape('dashed', `M${round(x)} ${round(y - 4)}h${SIGN}`),
    });
  return entries;
}

/** Draws it and gives where it ends. */
export function drawKey(
  sheet: DiagramSheet,
  { drawing: words }: Pick<Words, 'drawing'>,
  signals: Signals,
  scale: Scale,
  { left, right, from }: Place,
): number {
  const { timing } = words;
  const step = letterHeight('text') + 2;
  let y = from;
  const write = (text: string, indent = 0): void => {
    for (const part of wrapText(text, right - left - indent, (piece) => letterWidth(piece, 'text'))) {
      y += step;
      sheet.text('text', part, left + indent, y, 'start');
    }
  };
  const passes = scale.ticks.length > 0;
  signals.acts.forEach(({ at, act }, index) => {
    const moment = timing.moment(signals.moments[at]!);
    write(timing.act({ number: index + 1, ...(passes ? { at: moment } : {}), act }));
  });
  y += 6;
  let x = left;
  y += step;
  for (const { text, draw } of entriesOf(sheet, words, signals, scale)) {
    const wide = SIGN + AFTER + letterWidth(text, 'text');
    if (x > left && x + wide > right) {
      x = left;
      y += step;
    }
    draw(x, y);
    if (wide <= right - left) sheet.text('text', text, x + SIGN + AFTER, y, 'start');
    else {
      y -= step;
      write(text, SIGN + AFTER);
    }
    x += wide + BETWEEN;
  }
  write(signals.operateTimes ? timing.withTimes : timing.withoutTimes);
  return y + 6;
}
