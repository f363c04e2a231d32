import { heavy } from './canvas.ts';
import { bladeCells, type Sign, upright } from './sign.ts';

type Way = 'rest' | 'travelling' | 'moved';

/** Turned over, the blade swings above its pivot: it leans the other way to reach the same leg. */
const BODY: Readonly<Record<Way, readonly [plain: string, flipped: string]>> = {
  rest: ['┌╱ ╴┐', '└╲ ╴┘'],
  travelling: ['┌╶│╴┐', '└╶│╴┘'],
  moved: ['┌╶ ╲┐', '└╶ ╱┘'],
};

export const changeover: Sign = {
  cells: bladeCells(2, 3),
  write(canvas, symbol, seen) {
    upright(canvas, symbol, seen);
    const [rest = true, moved = false] = seen.closed ?? [];
    const body = BODY[moved ? 'moved' : rest ? 'rest' : 'travelling'][symbol.flipped ? 1 : 0];
    const [, breakLeg, makeLeg] = seen.live;
    const corner = (at: number, live: boolean | undefined): string =>
      live ? heavy(body.charAt(at)) : body.charAt(at);
    canvas.put(
      symbol.x - 2,
      symbol.top + 1,
      `${corner(0, breakLeg)}${body.slice(1, 4)}${corner(4, makeLeg)}`,
    );
  },
};
