import { box, HEIGHT, lead, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

/** The common terminal of a controller's points, where it is not drawn at a point. */
const art = (above: boolean): SymbolArt => ({
  left: 16,
  right: 16,
  height: HEIGHT,
  rest: [],
  strokes: () => [box(-15, 14, 15, 30), above ? lead(0, [0, 0], [0, 14]) : lead(0, [0, 30], [0, HEIGHT])],
});

export const common: PartSymbol = {
  sort: 'other',
  said: 'common',
  art: ({ above }) => art(above),
};
