import { box, HEIGHT, lead, line, type SymbolArt } from './art.ts';
import { loadEffect, type PartSymbol, pulse } from './symbol.ts';

/** Sounder: a box with a mouth (from memory). */
const art: SymbolArt = {
  left: 8,
  right: 16,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    box(-6, 14, 6, 30),
    line([6, 17], [15, 13], [15, 31], [6, 27]),
    lead(0, [0, 0], [0, 14]),
    lead(1, [0, 30], [0, HEIGHT]),
  ],
};

export const sounder: PartSymbol = {
  sort: 'load',
  said: 'whole',
  art: () => art,
  effect: loadEffect((half) => box(-6, half ? 22 : 14, 6, 30), pulse(0, 22)),
};
