/** A state as it is shown, whoever worked it out. */
import type { Blocker, InputState, LampState } from '../../../shared/solution.ts';

export interface ShownState {
  /** By mechanism (`-K3`, `-A2:Q1`): the index of its position; undefined while it travels. Those left out are as drawn. */
  readonly positions: ReadonlyMap<string, number | undefined>;
  /** Terminals (`-K3:11`, `A:L`) on conductors that have a voltage against the return of their supply. */
  readonly energised: ReadonlySet<string>;
  /** By designation: lamps, sounders, valves, motors. */
  readonly loads: ReadonlyMap<string, LampState>;
  /** By coil, `-K3` or `-K7:B1`: has the voltage to operate. */
  readonly coils: ReadonlyMap<string, boolean>;
  /** By point, `-A1:I1`. */
  readonly inputs: ReadonlyMap<string, InputState>;
  /** Open contacts to pick out. */
  readonly stoppedBy: readonly Blocker[];
}

/** The drawn state: nothing energised, nothing moved. */
export const REST: ShownState = {
  positions: new Map(),
  energised: new Set(),
  loads: new Map(),
  coils: new Map(),
  inputs: new Map(),
  stoppedBy: [],
};

/** Where a mechanism stands; 0 where the state says nothing of it. */
export const positionOf = ({ positions }: ShownState, mechanism: string | undefined): number | undefined =>
  mechanism === undefined || !positions.has(mechanism) ? 0 : positions.get(mechanism);
