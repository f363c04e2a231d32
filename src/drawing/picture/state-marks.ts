/** What a state adds to a symbol: a lit lamp's inside and rays, an energised coil's filling. */
import type { SceneSymbol } from '../scene/types.ts';
import type { ShownState } from '../states/shown-state.ts';
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
