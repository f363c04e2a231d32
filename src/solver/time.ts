import { timeOut } from './coils.ts';
import type { Machine } from './machine.ts';
import { settleAfter } from './settle.ts';
import type { State } from './state.ts';

/** Rounding in sums of seconds must not part two timers that are due together. */
const TOGETHER = 1e-9;

/** When the next timer is due, in seconds; Infinity when none runs. */
export function nextDue(state: State): number {
  let next = Infinity;
  for (const due of state.due) if (due < next) next = due;
  return next;
}

/** Timers due at `when`, commanded but not yet moved. */
export function fireTimers(machine: Machine, state: State, when: number): number[] {
  const fired: number[] = [];
  for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) {
    if (state.due[mechanism]! > when + TOGETHER) continue;
    timeOut(machine, state, mechanism);
    fired.push(mechanism);
  }
  return fired;
}

/**
 * Lets `seconds` pass: each timer fires when it is due, and the circuit settles before the next one.
 *
 * @param settle - how to settle after timers have fired; called with the mechanisms that are commanded elsewhere
 */
export function advance(
  machine: Machine,
  state: State,
  seconds: number,
  settle: (mechanisms: readonly number[]) => void = (mechanisms) => {
    settleAfter(machine, state, mechanisms);
  },
): void {
  const until = state.now + seconds;
  for (let next = nextDue(state); next <= until + TOGETHER; next = nextDue(state)) {
    state.now = next;
    settle(fireTimers(machine, state, next));
  }
  state.now = until;
}
