import type { Delay } from '../parts/moving.ts';
import { box, HEIGHT, lead, line, type Stroke, type SymbolArt } from './art.ts';
import { boxCells, body as inCharacters } from './characters.ts';
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

/** Coil, S00305; a latching relay's carry S for set and R for reset. */
const art = (delay: Delay | undefined, latch: 'set' | 'reset' | undefined): SymbolArt => ({
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

/** In characters: a delay T before or after the arrow, a latching relay's S and R. */
const DELAY: Readonly<Record<Delay, string>> = { operate: 'T›', release: '‹T', pulse: 'TT' };
const LATCH = { set: 'S', reset: 'R' } as const;

export const coil: PartSymbol = {
  sort: 'load',
  said: 'coil',
  art: ({ delay, latch }) => art(delay, latch),
  effect: ({ coil: name }, { coils }) =>
    name !== undefined && coils.get(name) ? [['lit', box(-14, 14, 14, 30)]] : [],
  cells: boxCells(2, 3),
  write: inCharacters(({ filled }, { delay, latch }) => [
    `[${(latch ? LATCH[latch] : delay ? DELAY[delay] : '').padEnd(3, filled)}]`,
    -2,
  ]),
};
