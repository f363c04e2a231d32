/** Paths picked out on a picture: a heavy line under them, with arrows the way they are told. */
import type { TraceHop } from '../../../shared/solution.ts';
import { pathOf, round, shape } from '../picture/shapes.ts';
import type { Shape } from '../picture/types.ts';
import { looksOf, poseOf } from '../scene/pose.ts';
import type { SceneSymbol } from '../scene/types.ts';
import { symbolFor } from '../symbols/index.ts';
import type { PictureState } from './picture-state.ts';
import { positionOf, type ShownState } from './shown-state.ts';
import { stopMark } from './stop-mark.ts';
import { type WayLine, waysOf } from './way-lines.ts';

/** The leads and the blade of a symbol that lie on the path picked out. */
function fedLeads(symbol: SceneSymbol, state: ShownState, passed: ReadonlySet<string> | undefined): string {
  if (!passed) return '';
  const pose = poseOf(symbol, positionOf(state, symbol.mechanism));
  return symbolFor(looksOf(symbol))
    .strokes(pose)
    .flatMap((stroke) => {
      if (stroke.kind !== 'line' || stroke.spot === undefined) return [];
      return passed.has(symbol.ports[stroke.spot]?.terminal ?? '')
        ? [pathOf(stroke, symbol.x, symbol.top)]
        : [];
    })
    .join('');
}

/** Shorter pieces of a path carry no arrow. */
const ARROW_FROM = 22;

/** The path picked out: a heavy line under the conductors, with arrows the way the path is told. */
function fedItems(lines: readonly WayLine[]): { readonly under: Shape[]; readonly over: Shape[] } {
  const line = lines
    .map(({ x1, y1, x2, y2 }) => `M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`)
    .join('');
  const arrows = lines
    .filter(({ x1, y1, x2, y2 }) => Math.abs(x2 - x1) + Math.abs(y2 - y1) >= ARROW_FROM)
    .map(({ x1, y1, x2, y2 }) => {
      const [dx, dy] = [Math.sign(x2 - x1), Math.sign(y2 - y1)];
      const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2];
      const point = (along: number, across: number): string =>
        `${round(x + dx * along - dy * across)} ${round(y + dy * along + dx * across)}`;
      return `M${point(5, 0)}L${point(-4, 4.5)}L${point(-4, -4.5)}Z`;
    })
    .join('');
  return { under: shape('fed', line), over: shape('fed-arrow', arrows) };
}

/** Picks out paths, each closed from one pole of a supply to the other, and the open contacts of the state. */
export const pickOut =
  (paths: readonly (readonly TraceHop[])[]): NonNullable<PictureState['pickedOut']> =>
  (scene, state) => {
    const way = waysOf(scene, paths);
    return (index) => {
      const { under, over } = fedItems(way.lines[index] ?? []);
      const symbols = scene.sheets[index]?.symbols ?? [];
      const leads = symbols.map((symbol) => fedLeads(symbol, state, way.symbols.get(symbol.id)));
      return {
        under: [...under, ...shape('fed', leads.join(''))],
        over,
        on: (symbol) => state.stoppedBy.flatMap((blocker) => stopMark(symbol, blocker, state)),
      };
    };
  };
