/** The next question: which skill, then a circuit for it that the learner hasn't seen. */
import type { FixedQuestion } from '../../shared/bank.ts';
import type { IssuedQuestion } from '../../shared/issued.ts';
import type { Placement } from '../../shared/settings.ts';
import { fingerprint, seedOf } from '../generator/index.ts';
import { type Choice, choose, newRecall, type Recalls } from '../memory/index.ts';
import { secondsExpected } from '../questions/index.ts';
import { type Candidate, candidateFor } from './candidate.ts';
import { growthOf } from './growth.ts';
import { questionIssued } from './issued.ts';
import { withPlacement } from './placement.ts';
import { firstOf, type IdeasLeft } from './telling-apart.ts';
import type { Course, Task } from './types.ts';

export interface TaskRequest {
  readonly course: Course;
  readonly recalls: Recalls;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Fixes every choice; with it and `number` the same task comes again. */
  readonly seed: string;
  /** Which question of this practice, from 0. */
  readonly number: number;
  /** Skills asked in this practice so far, the latest last. */
  readonly recent: readonly string[];
  /** Circuits the learner has answered before: they aren't asked again. */
  readonly seen: ReadonlySet<string>;
  /** Questions that were issued to the learner, in the order in which they are to be put. */
  readonly issued?: readonly IssuedQuestion[];
  /** The two wrong ideas of which the last answer to a skill left both open: the next circuit is one on which they differ. */
  readonly ideasLeft?: (skill: string) => IdeasLeft | undefined;
  /** Only this skill, whatever the memory says. */
  readonly only?: string;
  /** Skills that a plan wants today. */
  readonly planned?: readonly string[];
  /** What a placement found: it is taken as known. */
  readonly placement?: Placement | null;
  /** How many skills may be begun in a day; null or left out: as the memory has it. */
  readonly newADay?: number | null;
}

/** Circuits made for one task before giving up on this skill. */
const MOST_TRIES = 40;
function chooseSkill(request: TaskRequest): Choice {
  const { course, recalls, at, recent, seed, only, planned, placement = null, newADay } = request;
  if (only !== undefined)
    return course.skills.has(only) ? { kind: 'planned', skill: only } : { kind: 'none' };
  return choose({
    graph: course.graph,
    recalls: withPlacement(recalls, placement),
    at,
    recent,
    seed: seedOf(seed),
    ...(planned ? { planned } : {}),
    ...(typeof newADay === 'number' ? { newADay } : {}),
  });
}

/** What somebody wrote comes first: a skill is begun with a question made for beginning it. */
function fixedFor(
  request: TaskRequest,
  skill: string,
): { fixed: FixedQuestion; circuit: string } | undefined {
  for (const { questions } of request.course.bank.topics) {
    for (const fixed of questions) {
      if (fixed.skill !== skill) continue;
      const circuit = fingerprint(fixed.question.circuit);
      if (!request.seen.has(circuit)) return { fixed, circuit };
    }
  }
  return undefined;
}

function* freshFor(request: TaskRequest, skill: string): Generator<Candidate> {
  const { course, recalls, seed, number, seen } = request;
  const grown = growthOf(recalls.get(skill) ?? newRecall());
  const { recipes } = course.skills.get(skill)!;
  for (let attempt = 0; attempt < MOST_TRIES; attempt++) {
    const made = candidateFor(recipes, grown, `${seed}/${number}/${skill}/${attempt}`);
    if (made && !seen.has(made.circuit)) yield made;
  }
}

/** Questions issued for this skill, in their order. */
function* issuedFor(
  { course, seen, issued = [] }: TaskRequest,
  skill: string,
): Generator<Candidate & { readonly issued: string }> {
  for (const issue of issued) {
    if (issue.skill !== skill) continue;
    const made = questionIssued(course.skills.get(skill)!.recipes, issue, seen);
    if (made) yield { ...made, issued: issue.id };
  }
}

/**
 * The next task, or why there is none: nothing to practise, or no circuit of this skill that is new to the learner was
 * found (a fault of the bank's recipes).
 */
export function nextTask(
  request: TaskRequest,
):
  | { readonly ok: true; readonly task: Task }
  | { readonly ok: false; readonly reason: 'nothing' | 'no-circuit'; readonly skill?: string } {
  const choice = chooseSkill(request);
  if (choice.kind === 'none') return { ok: false, reason: 'nothing' };
  const { skill, kind: why } = choice;
  const begun = request.recalls.get(skill)?.kind === 'begun';
  const fixed = begun ? undefined : fixedFor(request, skill);
  if (fixed) {
    const { question, because } = fixed.fixed;
    const task = { skill, why, question, circuit: fixed.circuit, secondsExpected: secondsExpected(question) };
    return { ok: true, task: because === undefined ? task : { ...task, because } };
  }
  const left = request.ideasLeft?.(skill);
  const fresh = firstOf(issuedFor(request, skill), left) ?? firstOf(freshFor(request, skill), left);
  if (!fresh) return { ok: false, reason: 'no-circuit', skill };
  return { ok: true, task: { skill, why, ...fresh, secondsExpected: secondsExpected(fresh.question) } };
}
