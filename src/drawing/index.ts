/** Drawings: a circuit laid out as current paths, as a scene without a format; and the scene as text or picture. */
export { type DescribeOptions, describe, described } from './describe/describe.ts';
export { PROFILES, type Width } from './layout/graphic-profile.ts';
export { type LayoutOptions, layOut } from './layout/layout.ts';
export { sheetName } from './layout/sheets.ts';
export { type Letters, type Rename, renameFor } from './letters.ts';
export { PALETTES, type Palette, type Theme } from './palette.ts';
export { isLoad } from './parts/index.ts';
export { type Pictures, picturesOf } from './picture/picture.ts';
export type { Picture } from './picture/types.ts';
export type { Scene, SceneSheet, SceneSymbol, SceneText, TextRole } from './scene/types.ts';
export { shownState } from './states/from-solver.ts';
export type { ShownState } from './states/shown-state.ts';
export { tellCaption } from './steps/caption.ts';
export { type Step, type Steps, stepsOf } from './steps/steps.ts';
export { drawSvg, drawSvgs, type SvgOptions, svgOf } from './svg/draw-svg.ts';
export { drawText, type TextOptions } from './text/draw-text.ts';
export { type TimingOptions, timingPicture } from './timing/timing.ts';
export { type TimingTextOptions, timingText } from './timing/timing-text.ts';
