/**
 * From the history of answers to the recall states. A history is the truth and the states follow from it, so they can be
 * thrown away and worked out again, on another machine or under a better model.
 */
import type { Attempt, BegunRecall, Recall, SkillAnswer } from '../../shared/memory.ts';
import { ratioOf, weightOf } from './evidence.ts';
import { gradeOf } from './grade.ts';
import { newRecall, review } from './recall.ts';

/** 2026-01-01 UTC: no clock that is right says less. */
const NEVER_SET = Date.UTC(2026, 0, 1);

/** The recall states of one learner by skill. A skill that is not in it is new. */
export type Recalls = ReadonlyMap<string, Recall>;

export const recallOf = (recalls: Recalls, skill: string): Recall => recalls.get(skill) ?? newRecall();

/** With a hint half of it is the learner's own, after the explanation nothing. Common practice, no source. */
const ownShare = ({ share, help }: Attempt): number => (help.explanation ? 0 : help.hint ? share / 2 : share);

/** The state of a skill after one more of its answers. */
export const afterAnswer = (recall: Recall, { attempt, at, circuit }: SkillAnswer): BegunRecall =>
  review(recall, {
    grade: gradeOf(attempt).grade,
    at,
    circuit,
    share: ownShare(attempt),
    ratio: ratioOf(attempt),
  });

/** Whether an answer speaks for its learner being able to do it: all right, without help, on a circuit that is new. */
export function speaksFor(recall: Recall, { attempt, circuit }: SkillAnswer): boolean {
  const isFresh = recall.kind === 'new' || !recall.circuits.includes(circuit);
  return weightOf(ratioOf(attempt), gradeOf(attempt).grade, isFresh) > 1;
}

/**
 * The states that a whole history leads to: what `afterAnswer` gives, answer by answer. Answers count in the order in
 * which they stand; one with an id that came before is the same answer sent twice and counts once.
 *
 * @param from - the states before the first of them
 */
export function replay(history: Iterable<SkillAnswer>, from: Recalls = new Map()): Recalls {
  const recalls = new Map(from);
  const seen = new Set<string>();
  for (const answer of history) {
    if (seen.has(answer.id)) continue;
    seen.add(answer.id);
    recalls.set(answer.skill, afterAnswer(recallOf(recalls, answer.skill), answer));
  }
  return recalls;
}

/**
 * The moment at which an answer counts as given: what the clock of its device said (`at`), but not after it had arrived.
 * A clock that runs ahead can't be believed, and a rule that asked what time it is now would give another memory at each
 * moment and on each machine. Worked out once, where the answer is kept; everybody else is told. A clock that stands before
 * this program was made was never set (a small machine just switched on), and bounds nothing.
 *
 * @param arrivedAt - of all that arrived until then the latest moment, by the clock of the place where it is kept: that
 *   one may have been set back meanwhile
 */
export const countsAt = (at: number, arrivedAt: number): number =>
  arrivedAt < NEVER_SET ? at : Math.min(at, arrivedAt);

/**
 * Several histories of one learner (a phone, a terminal) as one in order of time. Answers of the same moment keep the
 * order of the histories; of answers with the same id the first stays.
 */
export function mergeHistories(histories: readonly (readonly SkillAnswer[])[]): readonly SkillAnswer[] {
  const byId = new Map<string, SkillAnswer>();
  for (const answer of histories.flat()) if (!byId.has(answer.id)) byId.set(answer.id, answer);
  return [...byId.values()].toSorted((one, other) => one.at - other.at);
}
