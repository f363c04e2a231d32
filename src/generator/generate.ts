/** From a seed to an accepted question's circuit. The same seed gives the same circuit on every machine. */
import { type Accepted, accept, type Reason, telling } from './accept.ts';
import { families } from './families/index.ts';
import { type Random, randomOf } from './random.ts';
import type { Draft, Family } from './types.ts';

export interface GenerateRequest {
  readonly seed: string;
  /** A family's id. */
  readonly family: string;
  /** On the family's own scale, 1 to 8; brought into its range. */
  readonly size: number;
  /** What else is required of it, judged before the best is chosen. */
  readonly want?: (accepted: Accepted) => boolean;
}

export type Refusals = Readonly<Partial<Record<Reason, number>>>;

export type Generated =
  | {
      readonly ok: true;
      readonly seed: string;
      readonly size: number;
      readonly accepted: Accepted;
      /** Drafts made. */
      readonly drafts: number;
      /** How many scenarios of them were refused, and why. */
      readonly refused: Refusals;
    }
  | { readonly ok: false; readonly drafts: number; readonly refused: Refusals };

/** Drafts tried before giving up. */
const MOST_DRAFTS = 60;
/** Acceptable drafts among which the one that tells most apart is taken. */
const COMPARED = 2;
/** Share of drafts let through that are answered by one pattern, or where everything stays as it was. */
const PLAIN_SHARE = 0.12;

export const familyOf = (id: string): Family | undefined => families.find((family) => family.id === id);

function proposal(family: Family, size: number, random: Random): Draft {
  return family.draft(random, { size });
}

/**
 * Makes a circuit and a scenario worth asking about.
 *
 * @throws RangeError when there is no such family: ids are checked where they are read
 */
export function generate({ seed, family: id, size, want }: GenerateRequest): Generated {
  const family = familyOf(id);
  if (!family) throw new RangeError(`no family ${id}`);
  const fitting = Math.min(family.size.max, Math.max(family.size.min, Math.round(size)));
  const refusals: Partial<Record<Reason, number>> = {};
  const refuse = (reason: Reason): void => {
    refusals[reason] = (refusals[reason] ?? 0) + 1;
  };
  let best: Accepted | undefined;
  let compared = 0;
  let drafts = 0;
  while (drafts < MOST_DRAFTS && compared < COMPARED) {
    const random = randomOf(`${id}/${fitting}/${seed}/${drafts++}`);
    const plain = random.chance(PLAIN_SHARE);
    let any = false;
    for (const found of accept(proposal(family, fitting, random), { plain })) {
      if (found.kind === 'refused') refuse(found.reason);
      else if (want && !want(found)) refuse('not-wanted');
      else {
        any = true;
        if (!best || telling(found) > telling(best)) best = found;
      }
    }
    if (any) compared++;
  }
  return best
    ? { ok: true, seed, size: fitting, accepted: best, drafts, refused: refusals }
    : { ok: false, drafts, refused: refusals };
}
