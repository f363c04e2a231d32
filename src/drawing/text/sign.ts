/** What a symbol is in characters: a body between its conductors. */
import type { Actuator } from '../parts/moving.ts';
import type { Body, DrawnSymbol } from '../symbols/symbol.ts';
import { type Canvas, heavy } from './canvas.ts';

/** What decides how much room a symbol takes in characters. */
export interface Extent {
  readonly actuator?: Actuator | undefined;
  readonly spots: readonly unknown[];
}

/** The symbol's own part of a state; at rest there is none. */
export interface Seen {
  readonly closed: readonly boolean[] | undefined;
  readonly live: readonly boolean[];
  /** What fills it; a space where it is off. */
  readonly filled: string;
  readonly input: string;
}

export interface Sign {
  /** Cells on either side of the line, its own included on the right; and rows. */
  readonly cells: (part: Extent) => Body;
  readonly write: (canvas: Canvas, symbol: DrawnSymbol, seen: Seen) => void;
}

/** So much to either side, an actuator's sign left of it. */
export const bladeCells =
  (left: number, right: number) =>
  ({ actuator }: Extent): Body => ({ left: left + (actuator ? 2 : 0), right, height: 3 });

export const boxCells = (left: number, right: number) => (): Body => ({ left, right, height: 3 });

/** The conductors above and below the body. */
export const upright = (canvas: Canvas, { ports }: DrawnSymbol, { live }: Seen): void => {
  ports.forEach(({ x, y }, at) => {
    canvas.put(x, y, live[at] ? heavy('│') : '│');
  });
};

/** The line through a closed contact. */
export const bar = ({ live }: Seen): string => (live.some(Boolean) ? heavy('│') : '│');

/** A body that begins `at` this cell beside the symbol's line. */
export const body =
  (text: (seen: Seen, symbol: DrawnSymbol) => readonly [text: string, at: number]) =>
  (canvas: Canvas, symbol: DrawnSymbol, seen: Seen): void => {
    upright(canvas, symbol, seen);
    const [written, at] = text(seen, symbol);
    canvas.put(symbol.x + at, symbol.top + 1, written);
  };
