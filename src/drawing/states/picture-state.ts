/** A state as a picture needs it: with the paths to pick out, where they run on the drawing. */
import type { Scene } from '../scene/types.ts';
import type { ShownState } from './shown-state.ts';

export interface WayLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** By sheet of the scene: the pieces in the direction of the path; and by symbol, the terminals it passes. */
export interface Way {
  readonly lines: readonly (readonly WayLine[])[];
  readonly symbols: ReadonlyMap<string, ReadonlySet<string>>;
}

export interface PictureState extends ShownState {
  /**
   * Where paths run that are to be picked out, each closed from one pole of a supply to the other; absent where none is. Whoever
   * shows a state without one doesn't need what finds it.
   */
  readonly wayOn?: (scene: Scene) => Way;
}
