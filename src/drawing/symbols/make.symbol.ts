import { blade, HEIGHT, line, type Stroke, type SymbolArt } from './art.ts';

/** The blade of a make contact: pivot below, leaning left at rest; it moves to the right to close. */
export const makeBlade = (closed: boolean): Stroke =>
  closed ? blade([0, 31], [0, 15]) : blade([0, 31], [-9, 15]);

export const makeLeads: readonly Stroke[] = [line([0, 0], [0, 15]), line([0, 31], [0, HEIGHT])];

/** Make contact, after S00227. */
export const make: SymbolArt = {
  left: 10,
  right: 6,
  height: HEIGHT,
  rest: [false],
  strokes: ({ closed }) => [...makeLeads, makeBlade(closed[0] === true)],
};
