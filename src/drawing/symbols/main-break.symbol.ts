import type { SymbolArt } from './art.ts';
import { breakArt, breakEdge } from './break.symbol.ts';
import type { PartSymbol } from './symbol.ts';

/** Main break contact of a contactor (from memory S00286). */
const art: SymbolArt = {
  ...breakArt,
  strokes: (pose) => [...breakArt.strokes(pose), { kind: 'arc', at: [0, 13], r: 3, from: 90, to: 270 }],
};

export const mainBreak: PartSymbol = {
  sort: 'pole',
  said: 'pole',
  art: () => art,
  edge: breakEdge,
};
