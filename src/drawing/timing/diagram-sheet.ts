import { LETTER_SIZE } from '../layout/lettering.ts';
import { round } from '../picture/shapes.ts';
import type { Ink, Lettering, Shape } from '../picture/types.ts';
import type { TextRole } from '../scene/types.ts';
import type { Level } from './lines.ts';
import type { Scale } from './scale.ts';

/** Height of a high line over a low one. */
export const RISE = 14;

/** Half of what is left open where time is cut, and of the two strokes there. */
const OPEN = 3;
const STROKE = 4;

const INK: Readonly<Record<Level, Ink>> = { 0: 'wire', 0.5: 'dashed', 1: 'live' };

/** Shapes and letters of a diagram in their order. */
export class DiagramSheet {
  readonly items: (Shape | Lettering)[] = [];

  shape(ink: Ink, d: string): void {
    if (d) this.items.push({ kind: 'shape', ink, d });
  }

  text(role: TextRole, text: string, x: number, baseline: number, anchor: Lettering['anchor']): void {
    this.items.push({ kind: 'text', role, text, x, baseline, size: LETTER_SIZE[role], anchor });
  }

  /** The middles of times that are cut between two places. */
  cutsIn({ x, gaps }: Scale, from: number, to: number): number[] {
    return gaps.flatMap((gap, index) => {
      const middle = (x[index]! + x[index + 1]!) / 2;
      return gap === 'cut' && middle > from && middle < to ? [middle] : [];
    });
  }

  /** A level line with the sign of a broken axis at some places: left open, with two strokes aslant. */
  interrupted(from: number, to: number, y: number, cuts: readonly number[]): string {
    let path = `M${round(from)} ${round(y)}`;
    for (const cut of cuts) {
      path += `H${round(cut - OPEN)}`;
      for (const side of [-OPEN, OPEN])
        path += `M${round(cut + side - 2)} ${round(y + STROKE)}l4 ${-2 * STROKE}`;
      path += `M${round(cut + OPEN)} ${round(y)}`;
    }
    return `${path}H${round(to)}`;
  }

  /** A piece of a signal's line. */
  line(level: Level, from: number, to: number, y: number, cuts: readonly number[] = []): void {
    this.shape(INK[level], this.interrupted(from, to, y, cuts));
  }
}
