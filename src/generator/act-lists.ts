/** Lists of acts worth asking about. */
import type { Act } from '../../shared/scenario.ts';
import type { Toggle } from './parts.ts';
import type { Random } from './random.ts';

/** Actuates, or presses and lets go. */
export const pulse = ({ on, off, springs }: Toggle): Act[] => (springs ? [on, off] : [on]);

/**
 * `count` acts on random ones of `toggles`, each from the state it is in; a button is let go before the next act half of
 * the time. At least one toggle is left actuated when there is any act at all.
 */
export function randomActs(random: Random, toggles: readonly Toggle[], count: number): Act[] {
  const on = new Set<Toggle>();
  const acts: Act[] = [];
  while (acts.length < count) {
    const toggle = random.pick(toggles);
    if (on.has(toggle)) {
      // Undoing the only thing done would ask about the rest state.
      if (on.size === 1 && acts.length === count - 1 && random.chance(0.8)) continue;
      on.delete(toggle);
      acts.push(toggle.off);
    } else {
      on.add(toggle);
      acts.push(toggle.on);
      if (toggle.springs && acts.length < count && random.chance(0.5)) {
        on.delete(toggle);
        acts.push(toggle.off);
      }
    }
  }
  return acts;
}

/** Actuates a random choice of toggles, in random order: at least one. */
export function someOn(random: Random, toggles: readonly Toggle[]): Act[] {
  const count = random.int(1, Math.max(1, toggles.length - 1));
  return random.sample(toggles, count).map(({ on }) => on);
}

/** `count` different act lists from `make`; fewer when it repeats itself. */
export function severalLists(count: number, make: () => Act[]): Act[][] {
  const lists = new Map<string, Act[]>();
  for (let tried = 0; lists.size < count && tried < 3 * count; tried++) {
    const list = make();
    lists.set(JSON.stringify(list), list);
  }
  return [...lists.values()];
}
