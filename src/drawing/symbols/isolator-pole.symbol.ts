import { line, type SymbolArt } from './art.ts';
import { makeArt, makeBlade, makeLeads } from './make.symbol.ts';
import type { PartSymbol } from './symbol.ts';

/** Pole of an isolator: the bar across the fixed contact (from memory S00288). */
const art: SymbolArt = {
  ...makeArt,
  strokes: ({ closed }) => [...makeLeads, line([-5, 15], [5, 15]), makeBlade(closed[0] === true)],
};

export const isolatorPole: PartSymbol = {
  sort: 'pole',
  said: 'pole',
  art: () => art,
};
