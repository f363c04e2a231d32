/** The next circuit where a learner's last answer has left two wrong ideas open: one on which they differ. */
import { answeredApart } from '../questions/index.ts';
import type { Candidate } from './candidate.ts';

/** Two ideas, either of which explains the last answer to a skill. */
export type IdeasLeft = readonly [one: string, other: string];

/** Candidates looked at before any circuit will do; each costs some milliseconds. */
const MOST_LOOKED_AT = 20;

/**
 * Of candidates the first; where two ideas are left, the first whose question somebody with the one answers otherwise than
 * somebody with the other, if there is one among a few. Made one by one, as they are looked at.
 */
export function firstOf<T extends Candidate>(candidates: Iterable<T>, left?: IdeasLeft): T | undefined {
  let first: T | undefined;
  let lookedAt = 0;
  for (const candidate of candidates) {
    if (!left || answeredApart(candidate.question, ...left)) return candidate;
    first ??= candidate;
    if (++lookedAt === MOST_LOOKED_AT) break;
  }
  return first;
}
