/** What flashes while flashers run: the states that follow one another. */
import { timeOut } from './coils.ts';
import { DRIVE, type Machine } from './machine.ts';
import { settleAfter } from './settle.ts';
import { copyState, type State } from './state.ts';
import { advance, nextDue } from './time.ts';

/** Changes of flashers looked at to tell what flashes with them. */
const FLASHES = 32;

/** Seconds no scenario comes to, so that a delay put off by them never ends. */
const NEVER = 1e12;

/**
 * The state with its delays put off: a timer that is in its delay hasn't changed over, however often a flasher has. One that
 * a flasher interrupts is started anew by it, and may then well change over with it.
 */
function inDelay(machine: Machine, from: State): State {
  const state = copyState(from);
  state.firings = 0;
  for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) {
    if (state.due[mechanism] === Infinity || machine.drive[mechanism] === DRIVE.flasher) continue;
    state.due[mechanism] = state.due[mechanism]! + NEVER;
  }
  return state;
}

/** Some of the states that follow one another when flashers run: each running flasher is seen in both its spans. */
export function flashing(machine: Machine, from: State): State[] {
  const state = inDelay(machine, from);
  const states = [from];
  const run = (at: State, changes: number): void => {
    for (let change = 0; change < changes; change++) {
      const next = nextDue(at);
      if (next - state.now > NEVER / 2) break;
      advance(machine, at, next - at.now);
      states.push(copyState(at));
    }
  };
  run(copyState(state), FLASHES);
  // Beside a quick one a slow one may not have changed in that time: it is brought to its change at once.
  for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) {
    if (state.due[mechanism] === Infinity || machine.drive[mechanism] !== DRIVE.flasher) continue;
    const slow = states.every(({ at }) => at[mechanism] === state.at[mechanism]);
    if (!slow) continue;
    const changed = copyState(state);
    timeOut(machine, changed, mechanism);
    settleAfter(machine, changed, [mechanism]);
    states.push(copyState(changed));
    run(changed, FLASHES / 4);
  }
  return states;
}

/** Whether a flasher is running, so that the state doesn't stay although no contact is about to move. */
export const isFlashing = (machine: Machine, state: State): boolean =>
  state.due.some(
    (when, mechanism) =>
      when !== Infinity && machine.drive[mechanism] === DRIVE.flasher && !state.held[mechanism],
  );
