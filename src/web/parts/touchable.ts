import type { Spot } from '../engine/messages.ts';

/** What can be touched on a drawing, by item: its name, the state it is given, and how that was marked. */
export interface Touchable {
  readonly label: string;
  readonly state: string | undefined;
  /** The state in words; itself where it has none. */
  readonly shown?: string | undefined;
  readonly mark?: { readonly correct: boolean };
  /** Only places of these kinds; all of the item's when absent. */
  readonly at?: readonly Spot['kind'][];
}
