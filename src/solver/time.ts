import { timeOut } from './coils.ts';
import type { Machine } from './machine.ts';
import { settleAfter } from './settle.ts';
import type { State } from './state.ts';

/** Rounding in sums of seconds must not part two timers that are due together. */
const TOGETHER = 1e-9;

/** Firings of timers that one scenario may take, what comes round again not counted; more is given up on. */
export const MOST_FIRINGS = 10_000;

/** Steps of evaluating that one wait may take. */
const MOST_EFFORT = 50_000_000;

/** When the next timer is due, in seconds; Infinity when none runs. */
export function nextDue(state: State): number {
  let next = Infinity;
  for (const due of state.due) if (due < next) next = due;
  return next;
}

/** Whether a timer is due by then. */
export const isDue = (state: State, when: number): boolean => nextDue(state) <= when + TOGETHER;

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

/** Lets the clock jump: whatever runs goes on as it did before. */
export function postpone(state: State, seconds: number): void {
  state.now += seconds;
  for (let mechanism = 0; mechanism < state.due.length; mechanism++)
    state.due[mechanism] = state.due[mechanism]! + seconds;
}

/** Before this many firings nothing is remembered: most waits are over by then. */
const REMEMBER_FROM = 8;

/** Notices that a state has come round again, so that whole rounds of a long wait can be left out. */
export class Rounds {
  private readonly seen = new Map<string, number>();
  private firings = 0;

  /** Call before each firing. Jumps as many whole rounds ahead as there are before `until`. */
  skip(state: State, until: number): void {
    if (++this.firings < REMEMBER_FROM) return;
    const next = nextDue(state);
    const due = Array.from(state.due, (when) => Math.round((when - next) * 1e7));
    const key = `${state.at.join()} ${state.goal.join()} ${state.own.join()} ${due.join()} ${state.left?.join()}`;
    const before = this.seen.get(key);
    this.seen.set(key, next);
    if (before === undefined) return;
    // To the nanosecond, so that many rounds don't add up the rounding of one.
    const round = Math.round((next - before) * 1e9) / 1e9;
    const rounds = Math.floor((until - next) / round);
    if (rounds <= 0) return;
    postpone(state, rounds * round);
    this.seen.clear();
  }
}

/**
 * Lets `seconds` pass: each timer fires when it is due, and the circuit settles before the next one.
 *
 * @param settle - how to settle after timers have fired; called with the mechanisms that are commanded elsewhere
 * @returns false when there were too many firings; the rest of the time passes without any
 */
export function advance(
  machine: Machine,
  state: State,
  seconds: number,
  settle: (mechanisms: readonly number[]) => void = (mechanisms) => {
    settleAfter(machine, state, mechanisms);
  },
): boolean {
  const until = state.now + seconds;
  const rounds = new Rounds();
  const enough = machine.effort.steps + MOST_EFFORT;
  while (isDue(state, until)) {
    if (state.firings >= MOST_FIRINGS || machine.effort.steps > enough) {
      postpone(state, until - state.now);
      return false;
    }
    rounds.skip(state, until);
    if (!isDue(state, until)) break;
    state.now = nextDue(state);
    state.firings++;
    settle(fireTimers(machine, state, state.now));
  }
  state.now = until;
  return true;
}
