import { box, type SymbolArt } from './art.ts';
import { makeBlade, makeLeads } from './make.symbol.ts';
import type { PartSymbol } from './symbol.ts';

/** A controller's output: a make contact in the controller's box. */
const art: SymbolArt = {
  left: 15,
  right: 11,
  height: 44,
  rest: [false],
  strokes: ({ closed }) => [box(-14, 13.5, 10, 32), ...makeLeads, makeBlade(closed[0] === true)],
};

export const output: PartSymbol = {
  sort: 'other',
  said: 'output',
  art: () => art,
};
