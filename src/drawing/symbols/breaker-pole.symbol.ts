import { line, type SymbolArt } from './art.ts';
import { makeArt, makeBlade, makeLeads } from './make.symbol.ts';
import type { PartSymbol } from './symbol.ts';

/** Pole of a circuit-breaker: the cross at the fixed contact (from memory S00287). */
const art: SymbolArt = {
  ...makeArt,
  strokes: ({ closed }) => [
    ...makeLeads,
    line([-3.2, 11.8], [3.2, 18.2]),
    line([-3.2, 18.2], [3.2, 11.8]),
    makeBlade(closed[0] === true),
  ],
};

export const breakerPole: PartSymbol = {
  sort: 'pole',
  said: 'pole',
  art: () => art,
};
