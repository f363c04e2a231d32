import type { Delay } from '../parts/index.ts';
import { box, HEIGHT, lead, line, type Stroke, type SymbolArt } from './art.ts';

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

/** Coil, S00305; a latching relay's carry S for set and R for reset. */
export const coil = (delay: Delay | undefined, latch: 'set' | 'reset' | undefined): SymbolArt => ({
  left: delay === 'pulse' ? 29 : delay ? 24 : 15,
  right: 15,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    ...body,
    ...(delay ? delayField(delay) : []),
    ...(latch
      ? [{ kind: 'letter', at: [0, 22], text: latch === 'set' ? 'S' : 'R', size: 11.5 } satisfies Stroke]
      : []),
  ],
});
