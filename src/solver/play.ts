import type { Act, Scenario } from '../../shared/scenario.ts';
import { applyAct } from './acts.ts';
import type { Machine } from './machine.ts';
import { settleAfter, settleAll } from './settle.ts';
import { type State, startState } from './state.ts';
import { advance } from './time.ts';

/** A new state of a scenario's start, settled. */
export function begin(machine: Machine, start: Scenario['start']): State {
  const state = startState(machine, start);
  settleAll(machine, state);
  return state;
}

/**
 * Does one act and settles. The fast way: mechanisms move in waves, no order is tried but that one.
 *
 * @returns false when no steady state was found, or there were too many firings of timers (see `MOST_FIRINGS`)
 */
export function doAct(machine: Machine, state: State, act: Act): boolean {
  if (act.kind === 'wait') {
    let steady = true;
    const passed = advance(machine, state, act.seconds, (mechanisms) => {
      if (settleAfter(machine, state, mechanisms) < 0) steady = false;
    });
    return steady && passed && !state.restless;
  }
  const effect = applyAct(machine, state, act);
  return (effect.supplies ? settleAll(machine, state) : settleAfter(machine, state, effect.mechanisms)) >= 0;
}

/** Does all acts of a scenario from its start; faults belong to the plan, not to this. */
export function play(
  machine: Machine,
  scenario: Pick<Scenario, 'start' | 'acts'>,
): { state: State; steady: boolean } {
  const state = startState(machine, scenario.start);
  let steady = settleAll(machine, state) >= 0;
  for (const act of scenario.acts) steady = doAct(machine, state, act) && steady;
  return { state, steady };
}
