import { blade, HEIGHT, lead, type Stroke, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

/** The blade of a make contact: pivot below, leaning left at rest; it moves to the right to close, and lies on the fixed contact. */
export const makeBlade = (closed: boolean): Stroke =>
  closed ? blade(1, [0, 31], [3.6, 12]) : blade(1, [0, 31], [-9, 15]);

export const makeLeads: readonly Stroke[] = [lead(0, [0, 0], [0, 15]), lead(1, [0, 31], [0, HEIGHT])];

/** Make contact, after S00227. */
export const makeArt: SymbolArt = {
  left: 10,
  right: 6,
  height: HEIGHT,
  rest: [false],
  strokes: ({ closed }) => [...makeLeads, makeBlade(closed[0] === true)],
};

export const make: PartSymbol = {
  sort: 'contact',
  said: 'make',
  art: () => makeArt,
};
