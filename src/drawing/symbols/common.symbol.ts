import { box, HEIGHT, lead, type SymbolArt } from './art.ts';

/** The common terminal of a controller's points, where it is not drawn at a point. */
export const common = (above: boolean): SymbolArt => ({
  left: 16,
  right: 16,
  height: HEIGHT,
  rest: [],
  strokes: () => [box(-15, 14, 15, 30), above ? lead(0, [0, 0], [0, 14]) : lead(0, [0, 30], [0, HEIGHT])],
});
