import type { Delay, Winding } from '../parts/moving.ts';
import { box, HEIGHT, lead, line, type Stroke, type SymbolArt } from './art.ts';
import type { PartSymbol } from './symbol.ts';

const body: readonly Stroke[] = [
  box(-14, 14, 14, 30),
  lead(0, [0, 0], [0, 14]),
  lead(1, [0, 30], [0, HEIGHT]),
];

/** The field at the coil's side: crossed for slow operating (S00312), filled for slow releasing (S00311). */
function delayField(delay: Delay): Stroke[] {
  switch (delay) {
    case 'operate':
      return [box(-23, 14, -14, 30), line([-23, 14], [-14, 30]), line([-23, 30], [-14, 14])];
    case 'release':
      return [box(-23, 14, -14, 30, true)];
    case 'pulse':
      return [
        box(-28, 14, -14, 30),
        line([-26, 26], [-23.5, 26], [-23.5, 18], [-21, 18], [-21, 26], [-18.5, 26], [-18.5, 18], [-16, 18]),
      ];
  }
}

export const LETTER: Readonly<Record<Winding, string>> = { set: 'S', reset: 'R', control: 'C' };

/** Coil, S00305; a latching relay's carry S for set and R for reset, a timer's control input C. */
const art = (delay: Delay | undefined, winding: Winding | undefined): SymbolArt => ({
  left: delay === 'pulse' ? 29 : delay ? 24 : 15,
  right: 15,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    ...body,
    ...(delay ? delayField(delay) : []),
    ...(winding
      ? [{ kind: 'letter', at: [0, 22], text: LETTER[winding], size: 11.5, inside: 'upper' } satisfies Stroke]
      : []),
  ],
});

export const coil: PartSymbol = {
  sort: 'load',
  said: 'coil',
  art: ({ delay, winding }) => art(delay, winding),
  effect: ({ coil: name }, { coils }) =>
    name !== undefined && coils.get(name) ? [['lit', box(-14, 14, 14, 30)]] : [],
};
