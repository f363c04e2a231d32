/** The states that a plant comes to by what can be done in it, searched breadth first: what rules of practice look at. */
import type { Act } from '../../shared/scenario.ts';
import type { Machine } from './machine.ts';
import type { Plant } from './plant.ts';
import { doAct } from './play.ts';
import { copyState, type State } from './state.ts';

/** Masks of a mechanism's two positions: at rest, and operated (a button: pressed). */
export const REST = 1;
export const OPERATED = 2;

/** States looked at; a plant with more than that many of its buttons and field contacts is searched in part. */
const MOST_STATES = 400;

export interface Taken {
  readonly before: State;
  readonly after: State;
  /** All that has been done, this last. */
  readonly done: readonly Act[];
}

const keyOf = ({ at, due }: State): string =>
  `${at.join('')} ${due.map((when) => (when === Infinity ? 0 : 1)).join('')}`;

/** Does all of them to a copy; undefined when something never rests, which tells nothing about anything. */
export function afterAll(machine: Machine, state: State, acts: readonly Act[]): State | undefined {
  const next = copyState(state);
  for (const act of acts) if (!doAct(machine, next, act)) return undefined;
  return next;
}

/**
 * Takes every one of `moves` (an act, or a few that belong together) from every state that they lead to, with mechanisms moving
 * in waves.
 *
 * @param look - told of each move taken; `true` ends the walk
 */
export function walkPlant(
  { machine, start }: Plant,
  moves: readonly (readonly Act[])[],
  look: (taken: Taken) => unknown,
): void {
  const queue: { state: State; done: readonly Act[] }[] = [{ state: start, done: [] }];
  const known = new Set([keyOf(start)]);
  for (const { state, done } of queue) {
    for (const move of moves) {
      const after = afterAll(machine, state, move);
      if (!after) continue;
      const now = [...done, ...move];
      if (look({ before: state, after, done: now }) === true) return;
      const key = keyOf(after);
      if (known.has(key) || known.size >= MOST_STATES) continue;
      known.add(key);
      queue.push({ state: after, done: now });
    }
  }
}
