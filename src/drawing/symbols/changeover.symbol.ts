import { type Canvas, heavy } from '../text/canvas.ts';
import { blade, HEIGHT, LEG, lead, type SymbolArt } from './art.ts';
import { bladeCells, upright } from './characters.ts';
import type { DrawnSymbol, PartSymbol, Seen } from './symbol.ts';

/**
 * Changeover contact, break before make, after S00230, with the common above: the blade touches the foot of the break
 * leg on the left; operated it has moved to the make leg on the right; on the way it touches neither.
 */
const art: SymbolArt = {
  left: LEG + 2,
  right: LEG + 2,
  height: HEIGHT,
  rest: [true, false],
  strokes: ({ closed }) => [
    lead(0, [0, 0], [0, 14]),
    lead(1, [-LEG, HEIGHT], [-LEG, 29], [-3, 29]),
    lead(2, [LEG, HEIGHT], [LEG, 29]),
    blade(0, [0, 14], closed[0] === true ? [-6.5, 30.5] : closed[1] === true ? [LEG, 29] : [1.5, 28]),
  ],
};

type Way = 'rest' | 'travelling' | 'moved';

/** Turned over, the blade swings above its pivot: it leans the other way to reach the same leg. */
const BODY: Readonly<Record<Way, readonly [plain: string, flipped: string]>> = {
  rest: ['┌╱ ╴┐', '└╲ ╴┘'],
  travelling: ['┌╶│╴┐', '└╶│╴┘'],
  moved: ['┌╶ ╲┐', '└╶ ╱┘'],
};

function write(canvas: Canvas, symbol: DrawnSymbol, seen: Seen): void {
  upright(canvas, symbol, seen);
  const [rest = true, moved = false] = seen.closed ?? [];
  const body = BODY[moved ? 'moved' : rest ? 'rest' : 'travelling'][symbol.flipped ? 1 : 0];
  const [, breakLeg, makeLeg] = seen.live;
  const corner = (at: number, live: boolean | undefined): string =>
    live ? heavy(body.charAt(at)) : body.charAt(at);
  canvas.put(symbol.x - 2, symbol.top + 1, `${corner(0, breakLeg)}${body.slice(1, 4)}${corner(4, makeLeg)}`);
}

export const changeover: PartSymbol = {
  sort: 'contact',
  said: 'changeover',
  art: () => art,
  edge: ([rest, moved]) => (moved ? 5.5 : rest ? -3.6 : 1),
  cells: bladeCells(2, 3),
  write,
};
