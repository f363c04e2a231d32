import { box, HEIGHT, lead, line, type SymbolArt } from './art.ts';

/** A controller's input: a box with the step from 0 to 1. */
export const input = (common: boolean): SymbolArt => ({
  left: 16,
  right: 16,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    box(-15, 14, 15, 30),
    line([-8, 26], [-1, 26], [-1, 18], [8, 18]),
    lead(0, [0, 0], [0, 14]),
    ...(common ? [lead(1, [0, 30], [0, HEIGHT])] : []),
  ],
});
