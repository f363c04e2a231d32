import { box, HEIGHT, lead, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

/** Main pole of a thermal overload: the heated strip in its box (from memory). */
const art: SymbolArt = {
  left: 10,
  right: 10,
  height: HEIGHT,
  rest: [true],
  strokes: () => [
    box(-9, 13, 9, 31),
    lead(0, [0, 0], [0, 17.5], [5, 17.5], [5, 26.5], [0, 26.5], [0, HEIGHT]),
  ],
};

export const heater: PartSymbol = {
  sort: 'pole',
  said: 'pole',
  art: () => art,
  edge: (_, side) => (side === 'left' ? -9 : 9),
};
