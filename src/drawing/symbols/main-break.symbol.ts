import type { SymbolArt } from './art.ts';
import { breaks } from './break.symbol.ts';

/** Main break contact of a contactor (from memory S00286). */
export const mainBreak: SymbolArt = {
  ...breaks,
  strokes: (pose) => [...breaks.strokes(pose), { kind: 'arc', at: [0, 13], r: 3, from: 90, to: 270 }],
};
