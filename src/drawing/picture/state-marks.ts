/** What a state adds to a symbol: a lit lamp's inside and rays, an energised coil's filling, the bar on a blocking contact. */
import type { Blocker } from '../../../shared/solution.ts';
import type { SceneSymbol } from '../scene/types.ts';
import { positionOf, type ShownState } from '../states/shown-state.ts';
import { LEG } from '../symbols/index.ts';
import { symbolOf } from '../symbols/registry.ts';
import { pathOf } from './shapes.ts';
import type { Ink } from './types.ts';

export interface Effect {
  readonly ink: Ink;
  readonly d: string;
}

export const effectsOf = (symbol: SceneSymbol, state: ShownState): Effect[] =>
  (symbolOf(symbol.form).effect?.(symbol, state) ?? []).map(([ink, stroke]) => ({
    ink,
    d: pathOf(stroke, 0, 0),
  }));

const R = 4;

/** Where the mark of an open contact stands: in its gap, on the side where its blade is not. */
function gapOf(symbol: SceneSymbol, to: string, state: ShownState): readonly [number, number] {
  const moved = positionOf(state, symbol.mechanism) !== 0;
  const { gap } = symbolOf(symbol.form);
  if (gap) return gap;
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
