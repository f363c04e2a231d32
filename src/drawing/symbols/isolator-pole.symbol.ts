import { line, type SymbolArt } from './art.ts';
import { make, makeBlade, makeLeads } from './make.symbol.ts';

/** Pole of an isolator: the bar across the fixed contact (from memory S00288). */
export const isolatorPole: SymbolArt = {
  ...make,
  strokes: ({ closed }) => [...makeLeads, line([-5, 15], [5, 15]), makeBlade(closed[0] === true)],
};
