import type { SymbolArt } from './art.ts';
import { makeArt, makeBlade, makeLeads } from './make.symbol.ts';
import type { PartSymbol } from './symbol.ts';

/** Main contact of a contactor: a make contact with the half circle at its fixed end (from memory S00284). */
const art: SymbolArt = {
  ...makeArt,
  strokes: ({ closed }) => [
    ...makeLeads,
    { kind: 'arc', at: [0, 12], r: 3, from: 90, to: 270 },
    makeBlade(closed[0] === true),
  ],
};

export const mainMake: PartSymbol = {
  sort: 'pole',
  said: 'pole',
  art: () => art,
};
