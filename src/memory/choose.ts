/**
 * Which skill to practise next. Skills are mixed, never one after itself while there is another (interleaved practice
 * scored 72 % where blocked practice scored 38: Rohrer 2014), and few new ones a day are begun (retention collapses when
 * new things come too fast: Reddy 2016).
 */
import type { Skill } from '../../shared/memory.ts';
import { begunOnDayOf, NEW_A_DAY } from './pace.ts';
import { isDue, isShown, retrievability, TARGET } from './recall.ts';
import { type Recalls, recallOf } from './replay.ts';
import { openSkills, type SkillGraph } from './skills.ts';
import { turnOf } from './turn.ts';

/** A skill that isn't shown, or was lost just now, comes back in the same practice, but not for ever: asked so often, it waits for its day. */
export const ASKED_AT_MOST = 4;

export interface ChoiceRequest {
  readonly graph: SkillGraph;
  readonly recalls: Recalls;
  readonly at: number;
  /** The skills asked in this practice so far, the latest last. */
  readonly recent: readonly string[];
  /** Decides between skills that are equally urgent. */
  readonly seed: number;
  /** Default NEW_A_DAY. */
  readonly newADay?: number;
  /** Default TARGET. */
  readonly target?: number;
  /** The skills that a plan wants today. They go first, each when it is open; no other new skill is begun then. */
  readonly planned?: readonly string[];
}

/**
 * planned: a plan wants it today. due: about to be forgotten. unproven: begun and not yet shown, or lost just now. new.
 * ahead: nothing needs practice; this one is the next to. none: there is nothing to practise (no skills, or none begun
 * and no new ones allowed).
 */
export type Choice =
  | { readonly kind: 'planned' | 'due' | 'unproven' | 'new' | 'ahead'; readonly skill: string }
  | { readonly kind: 'none' };

interface Candidate {
  readonly kind: Exclude<Choice['kind'], 'none'>;
  readonly skill: string;
  /** Compared number by number within a kind, the lowest first. */
  readonly rank: readonly number[];
}

const ORDER: readonly Candidate['kind'][] = ['planned', 'due', 'unproven', 'new', 'ahead'];

function compare(one: Candidate, other: Candidate): number {
  const kinds = ORDER.indexOf(one.kind) - ORDER.indexOf(other.kind);
  if (kinds !== 0) return kinds;
  return one.rank.map((rank, index) => rank - other.rank[index]!).find((difference) => difference !== 0) ?? 0;
}

/** How many due skills stand under each other below each skill: what is due goes before what stands on it. */
function dueBelow(skills: readonly Skill[], due: ReadonlySet<string>): ReadonlyMap<string, number> {
  const below = new Map<string, number>();
  for (const { id, needs } of skills)
    below.set(id, Math.max(0, ...needs.map((need) => below.get(need)! + (due.has(need) ? 1 : 0))));
  return below;
}

/** Everything that may be asked now, each in the first kind that fits it. */
function candidates(request: ChoiceRequest): readonly Candidate[] {
  const { graph, recalls, at, recent, seed, target = TARGET } = request;
  const planned = new Set(request.planned);
  const room = begunOnDayOf(graph, recalls, at) < (request.newADay ?? NEW_A_DAY);
  const mayBegin = (skill: string): boolean => room && (!request.planned || planned.has(skill));
  const due = new Set(
    graph.skills.map(({ id }) => id).filter((id) => isDue(recallOf(recalls, id), at, target)),
  );
  const below = dueBelow(graph.skills, due);

  return openSkills(graph, recalls, at, target).flatMap((skill, place): Candidate[] => {
    const recall = recallOf(recalls, skill);
    const isNew = recall.kind === 'new';
    if (isNew && !mayBegin(skill)) return [];
    const lastAsked = recent.lastIndexOf(skill);
    const wantsMore = !isShown(recall) || (recall.kind === 'begun' && recall.lostLately > 0);
    const toProve = wantsMore && recent.filter((asked) => asked === skill).length < ASKED_AT_MOST;
    const urgency = isNew ? [1, place] : [retrievability(recall, at), turnOf(seed, skill)];
    if (planned.has(skill) && (lastAsked < 0 || toProve))
      return [{ kind: 'planned', skill, rank: [lastAsked, ...urgency] }];
    if (due.has(skill)) return [{ kind: 'due', skill, rank: [below.get(skill)!, ...urgency] }];
    if (isNew) return [{ kind: 'new', skill, rank: urgency }];
    return [{ kind: toProve ? 'unproven' : 'ahead', skill, rank: [lastAsked, ...urgency] }];
  });
}

/** The next skill. Depends on its request alone: the same request gives the same skill everywhere. */
export function choose(request: ChoiceRequest): Choice {
  const all = candidates(request);
  const others = all.filter(({ skill }) => skill !== request.recent.at(-1));
  const best = (others.length > 0 ? others : all).toSorted(compare)[0];
  return best ? { kind: best.kind, skill: best.skill } : { kind: 'none' };
}
