import { blade, HEIGHT, line, type SymbolArt } from './art.ts';

/** Break contact, after S00229: the blade touches the foot of the fixed contact and moves to the right to open. */
export const breaks: SymbolArt = {
  left: 4,
  right: 16,
  height: HEIGHT,
  rest: [true],
  strokes: ({ closed }) => [
    line([0, 0], [0, 16], [9, 16]),
    line([0, 31], [0, HEIGHT]),
    closed[0] === false ? blade([0, 31], [15, 19]) : blade([0, 31], [9, 13.5]),
  ],
};
