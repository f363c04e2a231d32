/** A sheet as shapes in their order, each in one of a few inks: what SVG and PDF are both written from. */
import type { TextRole } from '../scene/types.ts';

export type Ink =
  | 'wire'
  | 'symbol'
  | 'blade'
  | 'dashed'
  | 'solid'
  | 'dot'
  | 'frame'
  | 'frame-heavy'
  /** Energised conductors, and contacts and leads between them. */
  | 'live'
  | 'live-symbol'
  | 'live-blade'
  | 'live-dot'
  /** The path picked out, and its arrows. */
  | 'fed'
  | 'fed-arrow'
  /** The contact that stops it. */
  | 'stop'
  | 'stop-bar'
  /** The inside of what is lit or energised, and its rays. */
  | 'lit'
  | 'ray';

export interface Shape {
  readonly kind: 'shape';
  readonly ink: Ink;
  /** SVG path data. */
  readonly d: string;
  readonly net?: number;
}

export interface Lettering {
  readonly kind: 'text';
  readonly role: TextRole;
  readonly text: string;
  readonly x: number;
  readonly baseline: number;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** A part's shapes and letters, drawn from its own corner. */
export interface Group {
  readonly kind: 'group';
  readonly part: string;
  readonly x: number;
  readonly y: number;
  readonly items: readonly (Shape | Lettering)[];
}

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly items: readonly (Shape | Lettering | Group)[];
}
