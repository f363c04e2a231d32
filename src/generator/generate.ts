/** From a seed to an accepted question's circuit. The same seed gives the same circuit on every machine. */
import {
  type Accepted,
  type AcceptOptions,
  accept,
  eachAsked,
  keepsRules,
  type Reason,
  telling,
} from './accept.ts';
import { wiredOtherwise } from './as-found.ts';
import { families } from './families/index.ts';
import { free } from './free.ts';
import { randomOf } from './random.ts';
import type { Draft, Family } from './types.ts';

export interface GenerateRequest {
  readonly seed: string;
  /** A family's id, or `free`. */
  readonly family: string;
  /** On the family's own scale, 1 to 8; brought into its range. */
  readonly size: number;
  /** Whether a draft may be asked about at all: looked at for each of its scenarios before anything is solved. */
  readonly mayAsk?: (draft: Draft) => boolean;
  /** How things stand after each act is asked, not how they end. */
  readonly course?: boolean;
  /** Wired otherwise than its words say, and said to be (as-found.ts). */
  readonly asFound?: boolean;
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

/**
 * Share of questions whose drawing is as somebody found it: enough that words can't be trusted, few enough that mostly what is drawn is
 * what ought to be.
 */
export const AS_FOUND_SHARE = 0.2;

/** Drafts tried before giving up. */
const MOST_DRAFTS = 60;
/**
 * How many acceptable drafts are compared at most, and how many sound scenarios of each are held against the misconceptions, which
 * costs most.
 */
interface Comparing {
  readonly drafts: number;
  readonly scenarios: number;
}
const TO_TELL_MOST: Comparing = { drafts: 2, scenarios: 3 };
const AS_THEY_COME: Comparing = { drafts: 1, scenarios: 1 };
/** What tells this many misconceptions apart, and half as many wrong answers from each other, is taken at once. */
const ENOUGH = 6;
/** Share of drafts let through that are answered by one pattern, or where everything stays as it was. */
const PLAIN_SHARE = 0.12;

/**
 * Share of questions taken as they come instead. What tells most apart is mostly that something runs: asked alone, it could
 * be guessed, and what is told apart only by a machine that stays off would never be.
 */
const AS_IT_COMES = 0.3;

const tellsEnough = ({ tellsApart, wrongAnswers }: Accepted): boolean =>
  tellsApart.length >= ENOUGH && 2 * wrongAnswers >= ENOUGH;

/** A family by its id, free circuits among them. */
export const familyOf = (id: string): Family | undefined =>
  id === free.id ? free : families.find((family) => family.id === id);

/**
 * What one draft has to offer: of its scenarios those that are accepted, up to the first that tells enough or as many as are held
 * against the misconceptions.
 */
function offered(
  scenarios: readonly Draft[],
  most: number,
  options: AcceptOptions,
  refuse: (reason: Reason) => void,
): Accepted[] {
  const found: Accepted[] = [];
  let judged = 0;
  for (const each of accept(scenarios, options)) {
    if (each.kind === 'refused') refuse(each.reason);
    else found.push(each);
    if (each.kind === 'accepted' || each.reason === 'tells-nothing-apart') judged++;
    if (judged === most || (found.length > 0 && tellsEnough(found.at(-1)!))) break;
  }
  return found;
}

/**
 * Makes a circuit and a scenario worth asking about. Of a few acceptable drafts it takes the one that tells most
 * misconceptions apart.
 *
 * @throws RangeError when there is no such family: ids are checked where they are read
 */
export function generate({
  seed,
  family: id,
  size,
  mayAsk,
  course = false,
  asFound = false,
}: GenerateRequest): Generated {
  const family = familyOf(id);
  if (!family) throw new RangeError(`no family ${id}`);
  const fitting = Math.min(family.size.max, Math.max(family.size.min, Math.round(size)));
  const refused: Partial<Record<Reason, number>> = {};
  const refuse = (reason: Reason): void => {
    refused[reason] = (refused[reason] ?? 0) + 1;
  };
  const asItComes = randomOf(`${id}/${fitting}/${seed}/choice`).chance(AS_IT_COMES);
  const comparing = asItComes ? AS_THEY_COME : TO_TELL_MOST;
  let found: Accepted[] = [];
  let compared = 0;
  for (let drafts = 1; drafts <= MOST_DRAFTS; drafts++) {
    const random = randomOf(`${id}/${fitting}/${seed}/${drafts}`);
    const plain = random.chance(PLAIN_SHARE);
    const meant = family.draft(random, { size: fitting });
    const draft = asFound ? (wiredOtherwise(meant, random.child('as-found')) ?? meant) : meant;
    const each = eachAsked(draft);
    const may = mayAsk ? each.filter(mayAsk) : each;
    if (may.length === 0) refuse('not-wanted');
    // A family begins with what it is about; that isn't asked more than the rest.
    const scenarios = random.child('asked').shuffle(may);
    const offers = offered(scenarios, comparing.scenarios, { plain, course }, refuse);
    found.push(...offers);
    if (offers.length > 0) compared++;
    if (compared < comparing.drafts && drafts < MOST_DRAFTS && !found.some(tellsEnough)) continue;
    // The rules are looked at last, because they cost more than all else: few drafts break one.
    for (const accepted of found.sort((a, b) => telling(b) - telling(a))) {
      const broken = keepsRules(accepted.draft);
      if (!broken) return { ok: true, seed, size: fitting, accepted, drafts, refused };
      refuse(broken.reason);
    }
    found = [];
    compared = 0;
  }
  return { ok: false, drafts: MOST_DRAFTS, refused };
}
