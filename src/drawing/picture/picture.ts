/** A sheet of a scene, at rest or in a state, as a picture. */

import { LETTER_SIZE } from '../layout/lettering.ts';
import { isPolyphase } from '../parts/index.ts';
import { looksOf, poseOf } from '../scene/pose.ts';
import type { Scene, SceneSheet, SceneSymbol, SceneText } from '../scene/types.ts';
import type { PickedOut, PictureState } from '../states/picture-state.ts';
import { positionOf, REST, type ShownState } from '../states/shown-state.ts';
import { bladeAt, type Stroke, symbolFor } from '../symbols/index.ts';
import { pathOf, round, shape } from './shapes.ts';
import { effectsOf } from './state-marks.ts';
import type { Group, Ink, Lettering, Picture, Shape } from './types.ts';

/** Capitals are 0.718 of the em high in Helvetica: they stand in the middle of the text's box. */
const CAPITALS = 0.718;

function lettering({ role, text, x, y, width, height, anchor }: SceneText): Lettering {
  const size = LETTER_SIZE[role];
  return {
    kind: 'text',
    role,
    text,
    x: anchor === 'start' ? x : anchor === 'end' ? x + width : x + width / 2,
    baseline: y + height / 2 + (size * CAPITALS) / 2,
    size,
    anchor,
  };
}

/** How much of a symbol a state fills. */
type Filled = 'none' | 'half' | 'whole';

const isOnLit = (stroke: Stroke, filled: Filled): boolean =>
  'inside' in stroke && (filled === 'whole' || (filled === 'half' && stroke.inside === 'lower'));

const inkOf = (stroke: Stroke, live: boolean, filled: Filled): Ink => {
  if (isOnLit(stroke, filled)) return 'on-lit';
  if (stroke.kind !== 'line') return 'symbol';
  if (stroke.blade) return live ? 'live-blade' : 'blade';
  if (stroke.dashed) return 'dashed';
  if (stroke.filled) return 'solid';
  return live ? 'live-symbol' : 'symbol';
};

/** Strokes of a symbol gathered by their ink, those of one ink in one shape. */
class Gathered {
  private readonly byInk = new Map<Ink, string>();
  private readonly letters: Lettering[] = [];

  add(stroke: Stroke, live: boolean, filled: Filled): void {
    if (stroke.kind === 'letter') {
      const [x, y] = stroke.at;
      this.letters.push({
        kind: 'text',
        role: 'text',
        text: stroke.text,
        x,
        baseline: y + (stroke.size * CAPITALS) / 2,
        size: stroke.size,
        anchor: 'middle',
        ...(isOnLit(stroke, filled) ? { onLit: true } : {}),
      });
      return;
    }
    const ink = inkOf(stroke, live, filled);
    this.byInk.set(ink, `${this.byInk.get(ink) ?? ''}${pathOf(stroke, 0, 0)}`);
  }

  items(): (Shape | Lettering)[] {
    return [...[...this.byInk].flatMap(([ink, d]) => shape(ink, d)), ...this.letters];
  }
}

/** Symbols drawn before: a circuit has many of few kinds. */
const drawn = new Map<string, readonly (Shape | Lettering)[]>();
const KEEP = 2000;

function bodyItems(symbol: SceneSymbol, state: ShownState, filled: Filled): readonly (Shape | Lettering)[] {
  const pose = poseOf(symbol, positionOf(state, symbol.mechanism));
  const live = symbol.ports.map(({ terminal }) => state.energised.has(terminal));
  const above = symbol.ports[0]?.y === symbol.top;
  const spread = isPolyphase(symbol.form) ? pose.ports.join() : '';
  const key = `${symbol.look}|${symbol.flipped}|${above}|${pose.closed.join()}|${live.join()}|${spread}|${filled}`;
  const known = drawn.get(key);
  if (known) return known;
  const art = symbolFor(looksOf(symbol));
  const gathered = new Gathered();
  for (const stroke of art.strokes(pose))
    gathered.add(
      stroke,
      stroke.kind === 'line' && stroke.spot !== undefined && live[stroke.spot] === true,
      filled,
    );
  for (const stroke of art.beside?.(pose) ?? []) gathered.add(stroke, false, filled);
  const items = gathered.items();
  if (drawn.size > KEEP) drawn.clear();
  drawn.set(key, items);
  return items;
}

function symbolGroup(symbol: SceneSymbol, state: ShownState, over: readonly Shape[]): Group {
  const effects = effectsOf(symbol, state);
  const load = state.loads.get(symbol.device);
  const filled =
    load === 'flashing' || !effects.some(({ ink }) => ink === 'lit')
      ? 'none'
      : load === 'dim'
        ? 'half'
        : 'whole';
  const under = effects.flatMap(({ ink, d }) => shape(ink, d));
  const body = bodyItems(symbol, state, filled);
  return {
    kind: 'group',
    part: symbol.id,
    x: symbol.x,
    y: symbol.top,
    items: under.length + over.length > 0 ? [...under, ...body, ...over] : body,
  };
}

function wireItems({ wires }: SceneSheet, live: (net: number) => boolean): Shape[] {
  const byNet = new Map<number, string>();
  for (const { net, x1, y1, x2, y2 } of wires) {
    const end = x1 === x2 ? `V${round(y2)}` : y1 === y2 ? `H${round(x2)}` : `L${round(x2)} ${round(y2)}`;
    byNet.set(net, `${byNet.get(net) ?? ''}M${round(x1)} ${round(y1)}${end}`);
  }
  return [...byNet].flatMap(([net, d]) => shape(live(net) ? 'live' : 'wire', d, net));
}

/** Dashed lines from one moving part to the next. */
function linkItems({ links, symbols }: SceneSheet, state: ShownState): Shape[] {
  if (links.length === 0) return [];
  const known = new Map(symbols.map((symbol) => [symbol.id, symbol]));
  const bladeOf = (id: string, side: 'left' | 'right'): number => {
    const symbol = known.get(id);
    if (!symbol) return 0;
    const { closed } = poseOf(symbol, positionOf(state, symbol.mechanism));
    return bladeAt(symbol.form, closed, side);
  };
  return shape(
    'dashed',
    links
      .map(({ from, to, x1, x2, y }) => {
        const [start, end] = [x1 + bladeOf(from, 'right'), x2 + bladeOf(to, 'left')];
        return `M${round(start)} ${round(y)}H${round(end)}`;
      })
      .join(''),
  );
}

/** The arrow at the end of a conductor that goes on elsewhere; the ring where a supply's begins. */
function markItems({ marks }: SceneSheet): Shape[] {
  const arrows = marks
    .filter(({ kind, side }) => kind === 'goes-on' || side === 'right')
    .map(({ x, y, side }) => {
      const back = round(x + (side === 'left' ? 5 : -5));
      return `M${back} ${round(y - 3.5)}L${round(x)} ${round(y)}L${back} ${round(y + 3.5)}`;
    });
  const rings = marks
    .filter(({ kind, side }) => kind === 'supply' && side === 'left')
    .map(({ x, y }) => pathOf({ kind: 'circle', at: [-2.4, 0], r: 2.4 }, x, y));
  return [...shape('symbol', arrows.join('')), ...shape('symbol', rings.join(''))];
}

function lines(sheet: SceneSheet): Shape[] {
  const path = (heavy: boolean): string =>
    sheet.frame
      .filter((line) => line.heavy === heavy)
      .map(({ x1, y1, x2, y2 }) => `M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`)
      .join('');
  return [...shape('frame-heavy', path(true)), ...shape('frame', path(false))];
}

const NOTHING: PickedOut = { under: [], over: [], on: () => [] };

export interface Pictures {
  /** One sheet of the scene, counted from 0. */
  readonly picture: (index: number) => Picture;
}

/** Pictures of a scene's sheets, at rest unless a state is given. */
export function picturesOf(scene: Scene, state: PictureState = REST): Pictures {
  const pickedOut = state.pickedOut?.(scene, state);
  const live = scene.conductors.map((terminals) =>
    terminals.some((terminal) => state.energised.has(terminal)),
  );
  const isLiveNet = (net: number): boolean => live[net] === true;
  return {
    picture: (index) => {
      const sheet = scene.sheets[index] as SceneSheet;
      const dots = (which: boolean): string =>
        sheet.dots
          .filter(({ net }) => isLiveNet(net) === which)
          .map(({ x, y }) => pathOf({ kind: 'circle', at: [0, 0], r: which ? 3.2 : 2.6 }, x, y))
          .join('');
      const fed = pickedOut?.(index) ?? NOTHING;
      return {
        width: Math.ceil(sheet.width),
        height: Math.ceil(sheet.height),
        items: [
          ...lines(sheet),
          ...fed.under,
          ...wireItems(sheet, isLiveNet),
          ...fed.over,
          ...shape('dot', dots(false)),
          ...shape('live-dot', dots(true)),
          ...linkItems(sheet, state),
          ...markItems(sheet),
          ...sheet.symbols.map((symbol) => symbolGroup(symbol, state, fed.on(symbol))),
          ...sheet.texts.map(lettering),
        ],
      };
    },
  };
}
