import { line, type SymbolArt } from './art.ts';
import { make, makeBlade, makeLeads } from './make.symbol.ts';

/** Pole of a circuit-breaker: the cross at the fixed contact (from memory S00287). */
export const breakerPole: SymbolArt = {
  ...make,
  strokes: ({ closed }) => [
    ...makeLeads,
    line([-3.2, 11.8], [3.2, 18.2]),
    line([-3.2, 18.2], [3.2, 11.8]),
    makeBlade(closed[0] === true),
  ],
};
