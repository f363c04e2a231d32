/** How each ink is put on: colour, weight and dashes, the same on screen and paper. */
import type { Palette } from '../palette.ts';
import type { Ink } from './types.ts';

export interface InkStyle {
  readonly stroke?: keyof Palette;
  readonly width?: number;
  readonly fill?: keyof Palette;
  readonly dash?: readonly [number, number];
}

export const INKS: Readonly<Record<Ink, InkStyle>> = {
  wire: { stroke: 'ink', width: 1.3 },
  symbol: { stroke: 'ink', width: 1.3 },
  blade: { stroke: 'ink', width: 2 },
  dashed: { stroke: 'ink', width: 1, dash: [4, 3] },
  solid: { stroke: 'ink', width: 1.3, fill: 'ink' },
  dot: { fill: 'ink' },
  frame: { stroke: 'frame', width: 1 },
  'frame-heavy': { stroke: 'frame', width: 2 },
  live: { stroke: 'live', width: 2.4 },
  'live-symbol': { stroke: 'live', width: 2.4 },
  'live-blade': { stroke: 'live', width: 3 },
  'live-dot': { fill: 'live' },
  fed: { stroke: 'halo', width: 8 },
  'fed-arrow': { fill: 'fed' },
  stop: { stroke: 'stop', width: 1.6, fill: 'paper' },
  'stop-bar': { stroke: 'stop', width: 2.2 },
  'on-lit': { stroke: 'onLit', width: 1.3 },
  lit: { stroke: 'ink', width: 1.3, fill: 'lit' },
  ray: { stroke: 'ink', width: 1.3 },
};
