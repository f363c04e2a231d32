/** What a kind of device is to all that doesn't know kinds one by one. */
import type { DeviceKind, DeviceOf } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import type { PositionSaid } from '../../words/index.ts';
import type { Anatomy } from '../anatomy/types.ts';

export type Verb = Act['kind'];

/** What is done to a device; the others happen to a supply, or to nobody. */
export type DeviceVerb = Exclude<Verb, 'fail' | 'restore' | 'wait'>;

export interface DeviceTraits<K extends DeviceKind> {
  anatomy(device: DeviceOf<K>): Anatomy;
  /** What can be done to it: two that undo one another, or one. None where nothing can be done to it. */
  readonly verbs: readonly DeviceVerb[];
  /**
   * All that can be done to this one, the act that leaves the drawn state (or, for what feeds, the live one) before the one
   * that undoes it. Left out where it is each verb once, as listed.
   */
  acts?(device: DeviceOf<K>): readonly Act[];
  /** Who moves its contacts, where that is what they are for: a person, or the plant. */
  readonly movedBy?: 'hand' | 'plant';
  /** Changeovers that one of its kind may have, where it is bought with several. */
  readonly mostPoles?: number;
  /** It goes back by itself when it is let go. */
  readonly momentary?: boolean;
  /** Whether this one is there to stop something: what it puts out doesn't run while it is actuated. */
  stops?(device: DeviceOf<K>): boolean;
  /** How it is said to stand: in its first position, and in any other. Absent where nothing in it moves. */
  readonly stands?: readonly [first: PositionSaid['says'], other: PositionSaid['says']];
}

/** Where it has to be said to which position or point, what is said for an example: the last position, the first point. */
export const exampleOf = (acts: readonly Act[]): Act | undefined =>
  acts[0]?.kind === 'turn' ? acts.at(-1) : acts[0];
