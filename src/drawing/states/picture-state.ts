/** A state as a picture needs it: with the paths and the open contacts to pick out on it. */
import type { Shape } from '../picture/types.ts';
import type { Scene, SceneSymbol } from '../scene/types.ts';
import type { ShownState } from './shown-state.ts';

/** What is picked out on a sheet. */
export interface PickedOut {
  /** Under the conductors, and over them. */
  readonly under: readonly Shape[];
  readonly over: readonly Shape[];
  /** On a symbol: the mark on a contact that stops the current. */
  readonly on: (symbol: SceneSymbol) => readonly Shape[];
}

export interface PictureState extends ShownState {
  /**
   * What to pick out on each sheet of a scene; absent where there is nothing. Whoever shows a state without doesn't need what
   * draws it.
   */
  readonly pickedOut?: (scene: Scene, state: ShownState) => (sheet: number) => PickedOut;
}
