/** Symbols in characters: a body between its conductors. */
import { type Canvas, heavy } from '../text/canvas.ts';
import type { Body, DrawnSymbol, Extent, Seen } from './symbol.ts';

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
