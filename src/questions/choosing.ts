/** Which of several things to ask, so that no pattern of answers can be guessed. */
import type { Draft, Random } from '../generator/index.ts';
import { stateOf } from './items.ts';
import { rightSolver } from './solving.ts';

/** Share of questions in which everything stands alike where it can: if that never happened, it would be a pattern too. */
const ALL_ALIKE = 0.12;

/**
 * Chooses among candidates: as many in each state as can be, up to `most`, in the order given. Undefined when they all stand
 * alike and this time they must not.
 *
 * @param fewest - with fewer candidates there is no question
 */
export function balanced<T>(
  candidates: readonly T[],
  stateOf: (candidate: T) => string,
  { fewest, most }: { readonly fewest: number; readonly most: number },
  random: Random,
): T[] | undefined {
  if (candidates.length < fewest) return undefined;
  const count = Math.min(candidates.length, random.int(Math.max(fewest, Math.min(4, most)), most));
  const groups = new Map<string, T[]>();
  for (const candidate of random.shuffle(candidates)) {
    const state = stateOf(candidate);
    groups.set(state, [...(groups.get(state) ?? []), candidate]);
  }
  const large = [...groups.values()].filter((group) => group.length >= fewest);
  if (random.chance(ALL_ALIKE) && large.length > 0)
    return inOrder(candidates, random.pick(large).slice(0, count));
  if (groups.size < 2) return undefined;
  // Each state in turn gives one, so the rarer is not swamped by the other.
  const chosen: T[] = [];
  const left = random.shuffle([...groups.values()]);
  while (chosen.length < count) {
    for (const group of left) {
      const next = group.pop();
      if (next !== undefined && chosen.length < count) chosen.push(next);
    }
  }
  return inOrder(candidates, chosen);
}

const inOrder = <T>(candidates: readonly T[], chosen: readonly T[]): T[] => {
  const set = new Set(chosen);
  return candidates.filter((candidate) => set.has(candidate));
};

const MOST_ASKED = 8;

/** Which of a draft's lamps, inputs or relays to ask after its scenario. One alone is asked when there is no other. */
export function chooseItems(
  { circuit, scenario }: Pick<Draft, 'circuit' | 'scenario'>,
  items: readonly string[],
  random: Random,
): string[] | undefined {
  if (items.length < 2) return items.length === 0 ? undefined : [...items];
  const standpoint = rightSolver().solve(circuit, scenario);
  return (
    standpoint &&
    balanced(items, (item) => stateOf(standpoint, item), { fewest: 2, most: MOST_ASKED }, random)
  );
}

/** One thing, or several that don't all stand alike: of those the kinds ask, now and then only ones that do. */
export const worthAsking = (states: readonly string[]): boolean =>
  states.length === 1 || states.some((state) => state !== states[0]);
