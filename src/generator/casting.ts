/** Machines and signals of one plant given their numbers, so that texts on one drawing fit together and none repeats. */
import type { Random } from './random.ts';
import { type Plant, plants, type Signal, type Word } from './vocabulary/index.ts';

export const pickPlant = (random: Random): Plant => random.pick(plants);

/** Puts a machine's number in. */
export const numbered = (text: string, number: number): string => text.replace('#', String(number));

export const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** A signal of a numbered machine, all texts complete: `Vent fan 2 tripped`. */
export interface CastSignal extends Signal {
  /** Beside the contact. */
  readonly text: string;
}

function castSignal(signal: Signal, number: number): CastSignal {
  const full = ({ text, meaning }: Word): Word => ({ text: numbered(text, number), meaning });
  const acted = full(signal.acted);
  return {
    ...signal,
    thing: numbered(signal.thing, number),
    text: acted.text,
    acted,
    rest: full(signal.rest),
  };
}

/** What has acted is a fault or worse, and what hasn't is well: fit for an alarm, or for a relay that drops out on it. */
export const isFault = ({ wireOff, rest }: Signal): boolean =>
  wireOff === 'acted' && rest.meaning === 'normal';

/**
 * Whether its relay has to be in while it hasn't acted: at rest it would say that all is well, and with a wire off it is at rest.
 */
export const wellAtRest = ({ rest }: Signal): boolean => rest.meaning === 'normal';

/** `count` different signals that suit, no machine twice. */
export function castSignals(
  random: Random,
  plant: Plant,
  count: number,
  suits: (signal: Signal) => boolean = () => true,
): CastSignal[] {
  const cast = new Map<string, CastSignal>();
  const kinds = random.shuffle(plant.signals.filter(suits));
  for (let tried = 0; cast.size < count && tried < 40 * count; tried++) {
    const signal = castSignal(kinds[tried % kinds.length]!, random.int(1, 6));
    if (!cast.has(signal.thing)) cast.set(signal.thing, signal);
  }
  if (cast.size < count) throw new RangeError(`${plant.name} has fewer than ${count} signals`);
  return [...cast.values()];
}

/** One entry of a list with its machine's number: `cast(random, plant.drives)`. */
export function cast<T extends { readonly thing: string }>(
  random: Random,
  list: readonly T[],
): T & { number: number } {
  const entry = random.pick(list);
  const number = random.int(1, 6);
  return { ...entry, thing: numbered(entry.thing, number), number };
}

/** `Flour line: bucket elevator 2, running and tripped`. */
export const titleOf = (plant: Plant, subject: string, what: string): string =>
  `${plant.name}: ${lower(subject)}, ${what}`.slice(0, 120);
