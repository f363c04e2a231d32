import { HEIGHT, lead, line, type Outline, type SymbolArt } from './art.ts';
import { loadOn, type PartSymbol } from './symbol.ts';

const R = 10;
const D = R * Math.SQRT1_2;

/** Lamp, S00965. */
const art: SymbolArt = {
  left: 11,
  right: 11,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    { kind: 'circle', at: [0, 22], r: R },
    line([-D, 22 - D], [D, 22 + D]),
    line([-D, 22 + D], [D, 22 - D]),
    lead(0, [0, 0], [0, 22 - R]),
    lead(1, [0, 22 + R], [0, HEIGHT]),
  ],
};

const RADIANS = Math.PI / 180;

/** Rays to the right, where nothing is written; broken ones flash. */
function rays(broken: boolean): Outline[] {
  const pieces = broken
    ? [
        [12.5, 14],
        [15.5, 17],
      ]
    : [[12.5, 17]];
  return [-26, 0, 26].flatMap((angle) =>
    pieces.map(([from = 0, to = 0]): Outline => {
      const at = (r: number): readonly [number, number] => [
        r * Math.cos(angle * RADIANS),
        22 + r * Math.sin(angle * RADIANS),
      ];
      return { kind: 'line', points: [at(from), at(to)] };
    }),
  );
}

const inside = (half: boolean): Outline =>
  half ? { kind: 'arc', at: [0, 22], r: R, from: 0, to: 180 } : { kind: 'circle', at: [0, 22], r: R };

export const lamp: PartSymbol = {
  sort: 'load',
  said: 'whole',
  art: () => art,
  effect(symbol, state) {
    const on = loadOn(symbol, state);
    if (!on) return [];
    const lit = ['lit', inside(on === 'dim')] as const;
    return on === 'dim' ? [lit] : [lit, ...rays(on === 'flashing').map((ray) => ['ray', ray] as const)];
  },
};
