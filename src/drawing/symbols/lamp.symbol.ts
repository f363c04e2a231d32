import {
  type Half,
  HEIGHT,
  lead,
  line,
  type Outline,
  type Point,
  type Stroke,
  type SymbolArt,
} from './art.ts';
import { loadEffect, type PartSymbol, pulse } from './symbol.ts';

const R = 10;
const D = R * Math.SQRT1_2;

/** The two arms of the cross in one half. */
const cross = (dy: number, inside: Half): Stroke[] =>
  [-D, D].map(
    (dx): Stroke => ({
      kind: 'line',
      points: [
        [0, 22],
        [dx, 22 + dy],
      ],
      inside,
    }),
  );

/** Lamp, S00965. */
const art: SymbolArt = {
  left: 11,
  right: 11,
  height: HEIGHT,
  rest: [],
  strokes: () => [
    { kind: 'circle', at: [0, 22], r: R },
    ...cross(-D, 'upper'),
    ...cross(D, 'lower'),
    lead(0, [0, 0], [0, 22 - R]),
    lead(1, [0, 22 + R], [0, HEIGHT]),
  ],
};

const RADIANS = Math.PI / 180;

const onRim = (r: number, degrees: number): Point => [
  r * Math.cos(degrees * RADIANS),
  22 + r * Math.sin(degrees * RADIANS),
];

/** Rays to the right, where nothing is written. */
const rays = [-26, 0, 26].map((angle) => line(onRim(12.5, angle), onRim(17, angle)));

/** Two of the four fields between the cross's lines. */
const fields = [-90, 90].map(
  (middle): Outline => ({
    kind: 'line',
    closed: true,
    points: [[0, 22], ...[-45, -22, 0, 22, 45].map((angle) => onRim(R, middle + angle))],
  }),
);

const filled = loadEffect(
  (half) =>
    half ? { kind: 'arc', at: [0, 22], r: R, from: 0, to: 180 } : { kind: 'circle', at: [0, 22], r: R },
  pulse(17, 22),
);

export const lamp: PartSymbol = {
  sort: 'load',
  said: 'whole',
  art: () => art,
  /** Lit: filled, with rays; dim: half filled; flashing: two fields filled and a square wave, whatever its moment. */
  effect(symbol, state) {
    const load = state.loads.get(symbol.device);
    return [
      ...(load === 'flashing' ? fields : []).map((field) => ['lit', field] as const),
      ...filled(symbol, state),
      ...(load === 'lit' ? rays : []).map((ray) => ['ray', ray] as const),
    ];
  },
};
