/** What a state adds to a symbol: a lit lamp's inside and rays, an energised coil's filling, the bar on a blocking contact. */
import type { Blocker } from '../../../shared/solution.ts';
import type { SceneSymbol } from '../scene/types.ts';
import { positionOf, type ShownState } from '../states/shown-state.ts';
import { LEG, type Stroke } from '../symbols/index.ts';
import { pathOf } from './shapes.ts';
import type { Ink } from './types.ts';

export interface Effect {
  readonly ink: Ink;
  readonly d: string;
}

const RADIANS = Math.PI / 180;
type Shapeable = Exclude<Stroke, { kind: 'letter' }>;

const rectangle = (x1: number, y1: number, x2: number, y2: number): Shapeable => ({
  kind: 'line',
  closed: true,
  points: [
    [x1, y1],
    [x2, y1],
    [x2, y2],
    [x1, y2],
  ],
});

/** Rays to the right of a lamp, where nothing is written; broken ones flash. */
function rays(broken: boolean): Shapeable[] {
  const pieces = broken
    ? [
        [12.5, 14],
        [15.5, 17],
      ]
    : [[12.5, 17]];
  return [-26, 0, 26].flatMap((angle) =>
    pieces.map(([from = 0, to = 0]): Shapeable => {
      const at = (r: number): readonly [number, number] => [
        r * Math.cos(angle * RADIANS),
        22 + r * Math.sin(angle * RADIANS),
      ];
      return { kind: 'line', points: [at(from), at(to)] };
    }),
  );
}

const lampInside = (half: boolean): Shapeable =>
  half ? { kind: 'arc', at: [0, 22], r: 10, from: 0, to: 180 } : { kind: 'circle', at: [0, 22], r: 10 };

function coilOn(symbol: SceneSymbol, state: ShownState): boolean {
  const id = symbol.latch === 'reset' ? `${symbol.device}:B1` : symbol.device;
  return state.coils.get(id) === true;
}

function effectStrokes(symbol: SceneSymbol, state: ShownState): (readonly [Ink, Shapeable])[] {
  const lit = state.loads.get(symbol.device);
  switch (symbol.form) {
    case 'coil':
      return coilOn(symbol, state) ? [['lit', rectangle(-14, 14, 14, 30)]] : [];
    case 'lamp': {
      if (lit === undefined || lit === 'dark') return [];
      const inside = ['lit', lampInside(lit === 'dim')] as const;
      return lit === 'dim'
        ? [inside]
        : [inside, ...rays(lit === 'flashing').map((ray) => ['ray', ray] as const)];
    }
    case 'sounder':
    case 'valve':
      if (lit === undefined || lit === 'dark') return [];
      return [
        [
          'lit',
          symbol.form === 'valve'
            ? rectangle(-14, 14, 14, 30)
            : rectangle(-6, lit === 'dim' ? 22 : 14, 6, 30),
        ],
      ];
    case 'motor':
      return lit === undefined || lit === 'dark' ? [] : [['lit', { kind: 'circle', at: [0, 42], r: 24 }]];
    case 'input': {
      const point = symbol.ports[0]?.terminal ?? '';
      return state.inputs.get(point) === '1' ? [['lit', rectangle(-15, 14, 15, 30)]] : [];
    }
    default:
      return [];
  }
}

export const effectsOf = (symbol: SceneSymbol, state: ShownState): Effect[] =>
  effectStrokes(symbol, state).map(([ink, stroke]) => ({ ink, d: pathOf(stroke, 0, 0) }));

const R = 4;

/** Where the mark of an open contact stands: in its gap, on the side where its blade is not. */
function gapOf(symbol: SceneSymbol, to: string, state: ShownState): readonly [number, number] {
  const moved = positionOf(state, symbol.mechanism) !== 0;
  if (symbol.form === 'fuse') return [0, 22];
  if (symbol.form !== 'changeover') return moved ? [-5.5, 23] : [5.5, 22];
  const makeLeg = symbol.ports[2]?.terminal === `${symbol.device}:${to}`;
  return [makeLeg ? LEG - 1 : 1 - LEG, symbol.flipped ? 24 : 20];
}

/** The round mark with a bar on a contact that stops the current. */
export function stopMark(
  symbol: SceneSymbol,
  { device, enter, leave }: Blocker,
  state: ShownState,
): Effect[] {
  if (symbol.device !== device) return [];
  const has = (name: string): boolean =>
    symbol.ports.some(({ terminal }) => terminal === `${device}:${name}`);
  if (!has(enter) || !has(leave)) return [];
  const common = symbol.ways[0]?.from;
  const [x, y] = gapOf(symbol, enter === common ? leave : enter, state);
  return [
    { ink: 'stop', d: pathOf({ kind: 'circle', at: [x, y], r: R }, 0, 0) },
    {
      ink: 'stop-bar',
      d: pathOf(
        {
          kind: 'line',
          points: [
            [x - 2.4, y],
            [x + 2.4, y],
          ],
        },
        0,
        0,
      ),
    },
  ];
}
