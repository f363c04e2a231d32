import { box, type SymbolArt } from './art.ts';
import { makeBlade, makeLeads } from './make.symbol.ts';

/** A controller's output: a make contact in the controller's box. */
export const output: SymbolArt = {
  left: 15,
  right: 11,
  height: 44,
  rest: [false],
  strokes: ({ closed }) => [box(-14, 13.5, 10, 32), ...makeLeads, makeBlade(closed[0] === true)],
};
