/** Rings of relays of any size, for whoever wants to know what has too many orders; the generator refuses such circuits. */
import { decideRings } from './decide-rings.ts';
import { type ComeTo, EXPLORE_LIMITS, type ExploreLimits, settled } from './explore.ts';

export const byReasoning: ComeTo = (machine, starts) => {
  const decided = decideRings(machine, starts);
  return decided && settled(machine, decided.endings, decided.group);
};

export const REASONING_LIMITS: ExploreLimits = { ...EXPLORE_LIMITS, reasoning: byReasoning };
