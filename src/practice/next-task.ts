/** The next question: which skill, then a circuit for it that the learner hasn't seen. */
import type { FixedQuestion } from '../../shared/bank.ts';
import type { IssuedQuestion } from '../../shared/issued.ts';
import type { Recall } from '../../shared/memory.ts';
import type { Placement } from '../../shared/settings.ts';
import { fingerprint, seedOf } from '../generator/index.ts';
import { type Choice, choose, type Recalls, recallOf } from '../memory/index.ts';
import { secondsExpected } from '../questions/index.ts';
import { type Candidate, candidateFor } from './candidate.ts';
import { growthOf, LOST_TWICE } from './growth.ts';
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

/** Between two questions that somebody wrote there are so many fresh ones at least. Common practice, no source. */
const FRESH_BETWEEN = 4;

/**
 * Whether a question that somebody wrote comes next, where one is left: the first of a skill, the one after a lost answer, and
 * one now and then. After two lost answers in a row it is the smallest circuit there is.
 */
function wantsWritten(recall: Recall): boolean {
  if (recall.kind === 'new') return true;
  return recall.lostLately === 0
    ? recall.reviews % (FRESH_BETWEEN + 1) === 0
    : recall.lostLately < LOST_TWICE;
}

/** The first of those questions that was never put. */
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
  const grown = growthOf(recallOf(recalls, skill));
  const { recipes } = course.skills.get(skill)!;
  for (let attempt = 0; attempt < MOST_TRIES; attempt++) {
    const made = candidateFor(recipes, grown, `${seed}/${number}/${skill}/${attempt}`);
    if (made && !seen.has(made.circuit)) yield made;
  }
}

/** Questions issued for this skill, in their order; after a lost answer none that are too large for now. */
function* issuedFor(
  { course, recalls, seen, issued = [] }: TaskRequest,
  skill: string,
): Generator<Candidate & { readonly issued: string }> {
  const recall = recallOf(recalls, skill);
  const most = recall.kind === 'begun' && recall.lostLately > 0 ? growthOf(recall) : Number.POSITIVE_INFINITY;
  for (const issue of issued) {
    if (issue.skill !== skill || issue.reviews > most) continue;
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
  const left = request.ideasLeft?.(skill);
  const fixed =
    !left && wantsWritten(recallOf(request.recalls, skill)) ? fixedFor(request, skill) : undefined;
  if (fixed) {
    const { question, because } = fixed.fixed;
    const task = { skill, why, question, circuit: fixed.circuit, secondsExpected: secondsExpected(question) };
    return { ok: true, task: because === undefined ? task : { ...task, because } };
  }
  const fresh = firstOf(issuedFor(request, skill), left) ?? firstOf(freshFor(request, skill), left);
  if (!fresh) return { ok: false, reason: 'no-circuit', skill };
  return { ok: true, task: { skill, why, ...fresh, secondsExpected: secondsExpected(fresh.question) } };
}
