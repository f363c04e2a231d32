import type { Circuit } from '../../shared/circuit.ts';
import { withoutDeadEnds } from './dead-ends.ts';
import { type Machine, machineOf } from './machine.ts';
import { planOf } from './plan-of.ts';
import { begin } from './play.ts';
import { copyState, type State } from './state.ts';

/** A circuit as rules of practice look at it. */
export interface Plant {
  readonly machine: Machine;
  /** Switched on, with nothing done yet. */
  readonly start: State;
}

let latest: { readonly circuit: Circuit; readonly plant: Plant } | undefined;

/** The plant of a sound circuit. One rule after another looks at the same circuit, so the last one is kept. */
export function plantOf(circuit: Circuit): Plant {
  if (latest?.circuit !== circuit) {
    const machine = machineOf(withoutDeadEnds(planOf(circuit)));
    latest = { circuit, plant: { machine, start: begin(machine, 'live') } };
  }
  const { machine, start } = latest.plant;
  return { machine, start: copyState(start) };
}
