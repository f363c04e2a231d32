import { blade, HEIGHT, lead, line, type SymbolArt } from './art.ts';
import { makeArt } from './make.symbol.ts';
import type { PartSymbol } from './symbol.ts';

/** Pole of a switch-disconnector: the bar of a disconnector across the fixed contact, and the ring of what switches loads (from memory S00290). */
const art: SymbolArt = {
  ...makeArt,
  strokes: ({ closed }) => [
    lead(0, [0, 0], [0, 12.4]),
    line([-5, 12.4], [5, 12.4]),
    { kind: 'circle', at: [0, 14.8], r: 2.4 },
    lead(1, [0, 31], [0, HEIGHT]),
    blade(1, [0, 31], closed[0] ? [3.6, 13.5] : [-9, 15]),
  ],
};

export const isolatorPole: PartSymbol = {
  sort: 'pole',
  said: 'pole',
  art: () => art,
};
