import { lead, line, type Point, type Stroke, type SymbolArt } from './art.ts';
import { loadEffect, type PartSymbol, pulse } from './symbol.ts';

const R = 46;
const CENTRE = 14 + R;

/** Straight down into the circle; a conductor that stands too far out comes in at the side. */
function winding(spot: number, x: number, over: boolean): Stroke {
  const flip = ([px, py]: Point): Point => [px, over ? 2 * CENTRE - py : py];
  const inside = Math.abs(x) < R - 1;
  const rise = inside ? Math.sqrt(R * R - x * x) : R / 2;
  const side = Math.sign(x) * Math.sqrt(R * R - rise * rise);
  return lead(spot, flip([x, 0]), flip([x, CENTRE - rise]), ...(inside ? [] : [flip([side, CENTRE - rise])]));
}

/** The protective conductor from the motor's own terminal, to earth (from memory S00202). */
const PE: readonly Stroke[] = [
  line([R, CENTRE], [R + 11, CENTRE], [R + 11, CENTRE + 10]),
  line([R + 4, CENTRE + 10], [R + 18, CENTRE + 10]),
  line([R + 6.5, CENTRE + 13], [R + 15.5, CENTRE + 13]),
  line([R + 9, CENTRE + 16], [R + 13, CENTRE + 16]),
  { kind: 'letter', at: [R + 13, CENTRE - 8], text: 'PE', size: 11.5 },
];

/** Three-phase motor with three terminals above, or six, above and below. */
const art = (terminals: number): SymbolArt => ({
  left: R + 1,
  right: R + 22,
  height: terminals > 3 ? 2 * CENTRE : CENTRE + R + 1,
  rest: [],
  strokes: ({ ports }) => [
    { kind: 'circle', at: [0, CENTRE], r: R },
    { kind: 'letter', at: [0, CENTRE - 7], text: 'M', size: 16, inside: 'upper' },
    { kind: 'letter', at: [0, CENTRE + 10], text: '3~', size: 13, inside: 'lower' },
    ...PE,
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
    pulse(0, CENTRE + 28),
  ),
};
