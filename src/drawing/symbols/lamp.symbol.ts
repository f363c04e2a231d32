import { HEIGHT, lead, line, type SymbolArt } from './art.ts';

const R = 10;
const D = R * Math.SQRT1_2;

/** Lamp, S00965. */
export const lamp: SymbolArt = {
  left: 11,
  right: 11,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    { kind: 'circle', at: [0, 22], r: R },
    line([-D, 22 - D], [D, 22 + D]),
    line([-D, 22 + D], [D, 22 - D]),
    lead(0, [0, 0], [0, 22 - R]),
    lead(1, [0, 22 + R], [0, HEIGHT]),
  ],
};
