/** Each symbol in characters: a contact's blade leans as on the drawing, a changeover's touches its break leg. */

import type { LampState } from '../../../shared/solution.ts';
import { poseOf } from '../scene/pose.ts';
import type { SceneSymbol } from '../scene/types.ts';
import { positionOf, type ShownState } from '../states/shown-state.ts';
import type { Canvas } from './canvas.ts';
import type { Seen } from './sign.ts';
import { ACTUATOR_SIGNS, SIGNS } from './signs.ts';

/** What fills a lamp, and whatever else is on, dim or flashing. */
const FILLED: Readonly<Record<Exclude<LampState, 'dark'>, string>> = { lit: '█', dim: '▄', flashing: '▞' };

function seenIn(symbol: SceneSymbol, state: ShownState | undefined): Seen {
  if (!state) return { closed: undefined, live: [], filled: ' ', input: '0/1' };
  const position = symbol.mechanism === undefined ? 0 : positionOf(state, symbol.mechanism);
  const coil = symbol.coil !== undefined && state.coils.get(symbol.coil);
  const load = state.loads.get(symbol.device) ?? (coil ? 'lit' : 'dark');
  const input = state.inputs.get(symbol.ports[0]?.terminal ?? '');
  return {
    closed: poseOf(symbol, position).closed,
    live: symbol.ports.map(({ terminal }) => state.energised.has(terminal)),
    filled: load === 'dark' ? ' ' : FILLED[load],
    input: input === '0' || input === '1' ? ` ${input} ` : input === undefined ? '0/1' : ' ? ',
  };
}

/** Draws a symbol as it is drawn at rest, or as it stands in a state. */
export function drawGlyph(canvas: Canvas, symbol: SceneSymbol, state: ShownState | undefined): void {
  const { x, top, form, actuator } = symbol;
  SIGNS[form].write(canvas, symbol, seenIn(symbol, state));
  if (actuator) {
    const reach = form === 'changeover' ? 2 : 1;
    canvas.put(x - reach - 2, top + 1, `${ACTUATOR_SIGNS[actuator]}╌`);
  }
}
