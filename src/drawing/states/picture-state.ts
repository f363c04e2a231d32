/** A state as a picture needs it: with the paths to pick out on it. */
import type { Shape } from '../picture/types.ts';
import type { Scene } from '../scene/types.ts';
import type { ShownState } from './shown-state.ts';

/** What picks paths out on a sheet. */
export interface PickedOut {
  /** Under the conductors, and over them. */
  readonly under: readonly Shape[];
  readonly over: readonly Shape[];
}

export interface PictureState extends ShownState {
  /**
   * Paths to pick out on each sheet of a scene; absent where there are none. Whoever shows a state without any doesn't need what
   * draws them.
   */
  readonly pickedOut?: (scene: Scene, state: ShownState) => (sheet: number) => PickedOut;
}
