/** Which of several things to ask, so that no pattern of answers can be guessed. */
import type { Circuit } from '../../shared/circuit.ts';
import { contactOf } from '../circuit/index.ts';
import type { Draft, Random } from '../generator/index.ts';
import { stateOf } from './items.ts';
import type { Solver } from './solving.ts';

/** Fewer things with two states each are guessed too often. */
export const FEWEST_ASKED = 3;
/** As many as that where there are: a guesser has one chance in thirty-two. */
const ENOUGH = 5;
const MOST_ASKED = 8;
/** Tosses until one comes out as there are things to ask. */
const TOSSES = 8;

/**
 * Chooses among candidates, in the order given: how many of each state there are is drawn as if every one of them had fallen by a toss
 * of its own, so that no number of them is more likely than a guesser would have it.
 *
 * @param fewest - with fewer candidates there is no question
 */
export function unguessable<T>(
  candidates: readonly T[],
  stateOf: (candidate: T) => string,
  { fewest, most }: { readonly fewest: number; readonly most: number },
  random: Random,
): T[] | undefined {
  if (candidates.length < fewest) return undefined;
  const groups = new Map<string, T[]>();
  for (const candidate of random.shuffle(candidates)) {
    const state = stateOf(candidate);
    groups.set(state, [...(groups.get(state) ?? []), candidate]);
  }
  const all = Math.min(candidates.length, random.int(Math.max(fewest, Math.min(ENOUGH, most)), most));
  const states = [...groups.keys()];
  // Where all stand alike they are asked as seldom as that comes about by tosses.
  const tosses = states.length > 1 ? TOSSES : 1;
  for (let tried = 0; tried < tosses; tried++) {
    // Rather fewer of them than an improbable number of one state.
    const count = Math.max(fewest, all - Math.floor(tried / 2));
    const wanted = new Map<string, number>();
    for (let item = 0; item < count; item++) {
      const state = random.pick(states.length > 1 ? states : [...states, '']);
      wanted.set(state, (wanted.get(state) ?? 0) + 1);
    }
    if ([...wanted].some(([state, number]) => number > (groups.get(state)?.length ?? 0))) continue;
    const chosen = new Set([...wanted].flatMap(([state, number]) => groups.get(state)!.slice(0, number)));
    return candidates.filter((candidate) => chosen.has(candidate));
  }
  return undefined;
}

/** For each lamp, input or relay that is first on one leg of a changeover: the pole it hangs on, `-K1:1`. */
function polesOf(
  { paths, devices }: Pick<Circuit, 'paths' | 'devices'>,
  items: readonly string[],
): Map<string, string> {
  const asked = new Set(items);
  const poles = new Map<string, string>();
  for (const { steps } of paths) {
    const contacts = steps.filter(({ device, leave }) => leave !== undefined && !asked.has(device));
    const last = contacts.at(-1);
    const load = steps.find(({ device, enter }) => asked.has(device) || asked.has(`${device}:${enter}`));
    if (!last || !load) continue;
    const contact = contactOf({ devices }, last);
    const item = asked.has(load.device) ? load.device : `${load.device}:${load.enter}`;
    if (contact?.changeover && contact.pole !== undefined) poles.set(item, `${last.device} ${contact.pole}`);
  }
  return poles;
}

/** Without the second of two that hang on the two legs of one pole: who has the one has the other. */
export function independent(circuit: Circuit, items: readonly string[], random: Random): string[] {
  const poles = polesOf(circuit, items);
  const taken = new Set<string>();
  const kept = new Set(
    random.shuffle(items).filter((item) => {
      const pole = poles.get(item);
      if (pole === undefined) return true;
      if (taken.has(pole)) return false;
      taken.add(pole);
      return true;
    }),
  );
  return items.filter((item) => kept.has(item));
}

/** Which of a draft's lamps, inputs or relays to ask after its scenario; undefined where there are too few to ask. */
export function chooseItems(
  { circuit, scenario }: Pick<Draft, 'circuit' | 'scenario'>,
  items: readonly string[],
  random: Random,
  { solve }: Solver,
): string[] | undefined {
  const candidates = independent(circuit, items, random);
  if (candidates.length < FEWEST_ASKED) return undefined;
  const standpoint = solve(circuit, scenario);
  return (
    standpoint &&
    unguessable(
      candidates,
      (item) => stateOf(standpoint, item),
      { fewest: FEWEST_ASKED, most: MOST_ASKED },
      random,
    )
  );
}

/** Enough of them to be asked about. */
export const worthAsking = (items: readonly string[]): boolean => items.length >= FEWEST_ASKED;
