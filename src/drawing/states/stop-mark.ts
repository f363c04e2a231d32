/** The bar on a contact that stops the current. */
import type { Blocker } from '../../../shared/solution.ts';
import { pathOf, shape } from '../picture/shapes.ts';
import type { Shape } from '../picture/types.ts';
import type { SceneSymbol } from '../scene/types.ts';
import { LEG } from '../symbols/index.ts';
import { symbolOf } from '../symbols/registry.ts';
import { positionOf, type ShownState } from './shown-state.ts';

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
export function stopMark(symbol: SceneSymbol, { device, enter, leave }: Blocker, state: ShownState): Shape[] {
  if (symbol.device !== device) return [];
  const has = (name: string): boolean =>
    symbol.ports.some(({ terminal }) => terminal === `${device}:${name}`);
  if (!has(enter) || !has(leave)) return [];
  const common = symbol.ways[0]?.from;
  const [x, y] = gapOf(symbol, enter === common ? leave : enter, state);
  return [
    ...shape('stop', pathOf({ kind: 'circle', at: [x, y], r: R }, 0, 0)),
    ...shape(
      'stop-bar',
      pathOf(
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
    ),
  ];
}
