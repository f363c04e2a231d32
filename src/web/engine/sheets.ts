import type { Circuit } from '../../../shared/circuit.ts';
import { drawSvgs, layOut, type PictureState, PROFILES, type Scene } from '../../drawing/index.ts';
import type { Lettering } from '../../words/index.ts';
import type { Drawn, View } from './messages.ts';
import { meterOn } from './meter-place.ts';
import { spotsOf } from './spots.ts';

/** A circuit laid out once, to be drawn in many states: the picture of each sheet. */
export function sheetsIn(
  words: Lettering,
  circuit: Circuit,
  { width, theme }: View,
): (state: PictureState) => string[] {
  const scene = layOut(words, circuit, PROFILES[width]);
  return (state) => drawSvgs(scene, { theme, state });
}

/** Draws what has been laid out at rest, or in a state; with a meter on two of its terminals. */
export function drawLaidOut(
  scene: Scene,
  { theme }: View,
  state?: PictureState,
  points?: readonly [string, string],
): Drawn {
  const svgs = drawSvgs(scene, { theme, ...(state ? { state } : {}) });
  return {
    sheets: scene.sheets.map((sheet, index) => {
      const spots = spotsOf(sheet);
      const meter = points && meterOn(sheet, spots, points);
      return {
        title: sheet.title,
        svg: svgs[index]!,
        width: sheet.width,
        height: sheet.height,
        spots,
        ...(meter ? { meter } : {}),
      };
    }),
  };
}

/** Lays a circuit out and draws it. */
export const draw = (
  words: Lettering,
  circuit: Circuit,
  view: View,
  state?: PictureState,
  points?: readonly [string, string],
): Drawn => drawLaidOut(layOut(words, circuit, PROFILES[view.width]), view, state, points);
