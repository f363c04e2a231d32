import { box, HEIGHT, lead, line, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

/** A controller's input: a box with the step from 0 to 1. */
const art: SymbolArt = {
  left: 16,
  right: 16,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    box(-15, 14, 15, 30),
    { ...line([-8, 26], [-1, 26], [-1, 18], [8, 18]), inside: 'upper' },
    lead(0, [0, 0], [0, 14]),
    lead(1, [0, 30], [0, HEIGHT]),
  ],
};

export const input: PartSymbol = {
  sort: 'load',
  said: 'input',
  art: () => art,
  effect: ({ ports }, { inputs }) =>
    inputs.get(ports[0]?.terminal ?? '') === '1' ? [['lit', box(-15, 14, 15, 30)]] : [],
};
