/** A sheet as shapes in their order, each in one of a few inks: what SVG and PDF are both written from. */
import type { TextRole } from '../scene/types.ts';
import type { Ink } from './ink.ts';

export type { Ink };

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
  /** Written on what is lit. */
  readonly onLit?: boolean;
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
