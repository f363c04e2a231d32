/** Timer settings and waits: a wait never ends near the moment at which a timer is due. */
import type { Act } from '../../shared/scenario.ts';
import type { Random } from './random.ts';

/** Seconds that somebody would set a timer to. */
export const pickSeconds = (random: Random): number => random.pick([3, 4, 5, 6, 8, 10, 12, 15, 20, 30]);

export const wait = (seconds: number): Act => ({ kind: 'wait', seconds });

/** Well before a timer of `seconds` is due, and two such waits together well after. */
export const short = (random: Random, seconds: number): Act =>
  wait(random.int(Math.ceil(seconds * 0.6), Math.floor(seconds * 0.75)));

/** Well after it is due. */
export const long = (random: Random, seconds: number): Act =>
  wait(random.int(Math.ceil(seconds * 1.3), Math.ceil(seconds * 2)));
