import { type Machine, type State, startState } from '../../src/solver/index.ts';
import { clearCandidates, nothingPending, update } from '../../src/solver/settle.ts';
import { maskOf } from './tangle.ts';
import type { Standing } from './wiring.ts';

/** A state with its mechanisms put where `standing` says and its voltages worked out; nothing is settled. */
export function standAt(machine: Machine, standing: Standing, failed: readonly string[] = []): State {
  const state = startState(machine, 'live');
  machine.plan.supplies.forEach(({ name }, index) => {
    if (failed.includes(name)) state.supplyOn[index] = 0;
  });
  machine.plan.mechanisms.forEach(({ id }, index) => {
    const mask = maskOf(standing, id);
    state.at[index] = mask;
    state.heading[index] = mask;
    state.goal[index] = 1 << (31 - Math.clz32(mask));
  });
  const pending = { ...nothingPending(), all: true };
  update(machine, state, pending);
  clearCandidates(machine, pending);
  return state;
}
