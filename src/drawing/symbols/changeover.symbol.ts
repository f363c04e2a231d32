import { blade, HEIGHT, LEG, lead, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

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

export const changeover: PartSymbol = {
  sort: 'contact',
  said: 'changeover',
  art: () => art,
  edge: ([rest, moved]) => (moved ? 5.5 : rest ? -3.6 : 1),
};
