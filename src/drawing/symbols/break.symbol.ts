import { blade, HEIGHT, lead, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

/** Break contact, after S00229: the blade touches the foot of the fixed contact and moves to the right to open. */
export const breakArt: SymbolArt = {
  left: 10,
  right: 16,
  height: HEIGHT,
  rest: [true],
  strokes: ({ closed }) => [
    lead(0, [0, 0], [0, 16], [9, 16]),
    lead(1, [0, 31], [0, HEIGHT]),
    closed[0] === false ? blade(1, [0, 31], [15, 19]) : blade(1, [0, 31], [9, 13.5]),
  ],
};

export const breakEdge = ([closed]: readonly boolean[]): number => (closed === false ? 10 : 4.1);

export const breaks: PartSymbol = {
  sort: 'contact',
  said: 'break',
  art: () => breakArt,
  edge: breakEdge,
};
