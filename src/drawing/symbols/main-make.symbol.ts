import type { SymbolArt } from './art.ts';
import { make, makeBlade, makeLeads } from './make.symbol.ts';

/** Main contact of a contactor: a make contact with the half circle at its fixed end (from memory S00284). */
export const mainMake: SymbolArt = {
  ...make,
  strokes: ({ closed }) => [
    ...makeLeads,
    { kind: 'arc', at: [0, 12], r: 3, from: 90, to: 270 },
    makeBlade(closed[0] === true),
  ],
};
