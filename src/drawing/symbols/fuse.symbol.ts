import { box, HEIGHT, lead, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

/** Fuse, S00362: the wire goes through; blown or taken out, it ends at either side. */
const art: SymbolArt = {
  left: 6,
  right: 6,
  height: HEIGHT,
  rest: [true],
  strokes: ({ closed }) => [
    box(-5, 13, 5, 31),
    ...(closed[0] === false
      ? [lead(0, [0, 0], [0, 17]), lead(1, [0, 27], [0, HEIGHT])]
      : [lead(0, [0, 0], [0, HEIGHT])]),
  ],
};

export const fuse: PartSymbol = {
  sort: 'pole',
  said: 'whole',
  art: () => art,
  edge: (_, side) => (side === 'left' ? -5 : 5),
  gap: [0, 22],
};
