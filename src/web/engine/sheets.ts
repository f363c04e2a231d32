import type { Circuit } from '../../../shared/circuit.ts';
import {
  drawSvgs,
  layOut,
  type PictureState,
  PROFILES,
  type Scene,
  type SceneSheet,
} from '../../drawing/index.ts';
import type { Lettering } from '../../words/index.ts';
import type { Drawn, MeterDrawn, Spot, View } from './messages.ts';
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

/** Where a meter is on a sheet, if it is on it. */
export type MeterOn = (sheet: SceneSheet, spots: readonly Spot[]) => MeterDrawn | undefined;

/** Draws what has been laid out at rest, or in a state; with a meter where it has one. */
export function drawLaidOut(scene: Scene, { theme }: View, state?: PictureState, meterOn?: MeterOn): Drawn {
  const svgs = drawSvgs(scene, { theme, ...(state ? { state } : {}) });
  return {
    sheets: scene.sheets.map((sheet, index) => {
      const spots = spotsOf(sheet);
      const meter = meterOn?.(sheet, spots);
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
  meterOn?: MeterOn,
): Drawn => drawLaidOut(layOut(words, circuit, PROFILES[view.width]), view, state, meterOn);
