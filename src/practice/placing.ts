/**
 * Where a learner who knows some of it begins: a few questions, each on the skill that tells most, so that what is known
 * needn't be begun from the start.
 */
import type { SkillGraph } from '../memory/index.ts';

/** A placement asks no more questions than this. */
export const MOST_PLACING = 8;

export interface PlacingAnswer {
  readonly skill: string;
  /** Whole answer right, without help. */
  readonly right: boolean;
}

/** What to ask next, or what was found: the skills that are known, each with all it stands on. */
export type Placing =
  | { readonly kind: 'ask'; readonly skill: string }
  | { readonly kind: 'found'; readonly known: readonly string[] };

/** For each skill, everything it stands on and everything that stands on it, near or far; itself in both. */
function spansOf(graph: SkillGraph): {
  under: ReadonlyMap<string, ReadonlySet<string>>;
  over: ReadonlyMap<string, ReadonlySet<string>>;
} {
  const under = new Map<string, Set<string>>();
  const over = new Map<string, Set<string>>(graph.skills.map(({ id }) => [id, new Set()]));
  for (const { id, needs } of graph.skills) {
    const all = new Set([id, ...needs.flatMap((need) => [...under.get(need)!])]);
    under.set(id, all);
    for (const below of all) over.get(below)!.add(id);
  }
  return { under, over };
}

/**
 * The state of a placement after these answers, in the order given. A right answer speaks for all that the skill stands
 * on, a wrong one against all that stands on it; the skill asked next is the one of which either answer decides most.
 * What is known at the top rests on one answer, which luck could give: while questions are left it is asked again, on
 * another circuit, and a wrong answer takes it back.
 */
export function placing(graph: SkillGraph, answers: readonly PlacingAnswer[], most = MOST_PLACING): Placing {
  const { under, over } = spansOf(graph);
  const known = new Set<string>();
  const unknown = new Set<string>();
  const times = new Map<string, number>();
  for (const { skill, right } of answers) {
    if (!graph.byId.has(skill)) continue;
    times.set(skill, (times.get(skill) ?? 0) + 1);
    if (right) {
      for (const below of under.get(skill)!) if (!unknown.has(below)) known.add(below);
      continue;
    }
    for (const above of over.get(skill)!) {
      known.delete(above);
      unknown.add(above);
    }
  }
  const found: Placing = {
    kind: 'found',
    known: graph.skills.map(({ id }) => id).filter((id) => known.has(id)),
  };
  if (answers.length >= most) return found;

  const open = (id: string): boolean => !known.has(id) && !unknown.has(id);
  const count = (ids: ReadonlySet<string>): number => [...ids].filter(open).length;
  const undecided = graph.skills
    .filter(({ id }) => open(id))
    .map(({ id }) => {
      const [right, wrong] = [count(under.get(id)!), count(over.get(id)!)];
      return { id, least: Math.min(right, wrong), both: right + wrong };
    })
    .toSorted((one, other) => other.least - one.least || other.both - one.both);
  if (undecided[0]) return { kind: 'ask', skill: undecided[0].id };

  const top = graph.skills.find(
    ({ id }) =>
      known.has(id) &&
      times.get(id) === 1 &&
      ![...over.get(id)!].some((above) => above !== id && known.has(above)),
  );
  return top ? { kind: 'ask', skill: top.id } : found;
}
