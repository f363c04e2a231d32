import { lead, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

/** Through terminal: a ring on the line. */
const art: SymbolArt = {
  left: 5,
  right: 5,
  height: 16,
  rest: [],
  strokes: () => [
    { kind: 'circle', at: [0, 8], r: 3.4 },
    lead(0, [0, 0], [0, 4.6]),
    lead(1, [0, 11.4], [0, 16]),
  ],
};

export const terminal: PartSymbol = {
  sort: 'other',
  said: 'terminal',
  art: () => art,
};
