import { lead, PHASE, type Point, type Stroke, type SymbolArt } from './art.ts';
import { loadEffect, type PartSymbol, pulse } from './symbol.ts';

const R = 24;
const CENTRE = 42;

/** From a port straight down, then on to the circle. */
function winding(spot: number, x: number, over: boolean): Stroke {
  const flip = ([px, py]: Point): Point => [px, over ? 2 * CENTRE - py : py];
  if (x === 0) return lead(spot, flip([0, 0]), flip([0, CENTRE - R]));
  const angle = Math.atan2(CENTRE - 16, Math.abs(x));
  const meet: Point = [Math.sign(x) * R * Math.cos(angle), CENTRE - R * Math.sin(angle)];
  return lead(spot, flip([x, 0]), flip([x, 16]), flip(meet));
}

/** Three-phase motor with three terminals above, or six, above and below. */
const art = (terminals: number): SymbolArt => ({
  left: PHASE + 2,
  right: PHASE + 2,
  height: terminals > 3 ? 2 * CENTRE : CENTRE + R + 1,
  rest: [],
  strokes: ({ ports }) => [
    { kind: 'circle', at: [0, CENTRE], r: R },
    { kind: 'letter', at: [0, CENTRE - 6], text: 'M', size: 14 },
    { kind: 'letter', at: [0, CENTRE + 9], text: '3~', size: 11.5 },
    ...ports.map((x, index) => winding(index, x, index >= 3)),
  ],
});

export const motor: PartSymbol = {
  sort: 'load',
  said: 'whole',
  phases: true,
  art: ({ terminals }) => art(terminals),
  effect: loadEffect(
    (half) =>
      half
        ? { kind: 'arc', at: [0, CENTRE], r: R, from: 0, to: 180 }
        : { kind: 'circle', at: [0, CENTRE], r: R },
    pulse(0, CENTRE + 18),
  ),
};
