import { box, HEIGHT, lead, line, type SymbolArt } from './art.ts';
import { loadEffect, type PartSymbol, pulse } from './symbol.ts';

/** Solenoid valve: a coil that works the two triangles of a valve (from memory). */
const art: SymbolArt = {
  left: 32,
  right: 15,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    box(-14, 14, 14, 30),
    lead(0, [0, 0], [0, 14]),
    lead(1, [0, 30], [0, HEIGHT]),
    line([-14, 22], [-24, 22]),
    {
      kind: 'line',
      closed: true,
      points: [
        [-31, 17],
        [-17, 27],
        [-17, 17],
        [-31, 27],
      ],
    },
  ],
};

export const valve: PartSymbol = {
  sort: 'load',
  said: 'whole',
  art: () => art,
  effect: loadEffect((half) => box(-14, half ? 22 : 14, 14, 30), pulse(0, 22)),
};
