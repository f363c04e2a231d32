/** The skill graph: which skill stands on which, and which are open to a learner. */
import type { Skill } from '../../shared/memory.ts';
import type { Checked, Problem, ProblemPlace } from '../../shared/problem.ts';
import { findCircles } from './circles.ts';
import { memoryProblem } from './problem-codes.ts';
import { carries, TARGET } from './recall.ts';
import { type Recalls, recallOf } from './replay.ts';

/** A graph that has been checked. */
export interface SkillGraph {
  /** Each after everything it stands on; otherwise in the order given, which is the order of a curriculum. */
  readonly skills: readonly Skill[];
  readonly byId: ReadonlyMap<string, Skill>;
}

/**
 * Checks a list of skills: `duplicate-skill`, `unknown-skill` (as a prerequisite) and `skill-circle`, all of them at
 * once. `placeOf` tells where the skill at that index of the list was written.
 */
export function checkSkills(
  skills: readonly Skill[],
  placeOf: (index: number) => ProblemPlace = () => ({}),
): Checked<SkillGraph> {
  const problems: Problem[] = [];
  const byId = new Map<string, Skill>();
  const indexOf = new Map<string, number>();
  skills.forEach((skill, index) => {
    if (!byId.has(skill.id)) {
      byId.set(skill.id, skill);
      indexOf.set(skill.id, index);
      return;
    }
    problems.push(memoryProblem({ says: 'duplicate-skill', skill: skill.id }, placeOf(index)));
  });
  skills.forEach((skill, index) => {
    for (const need of skill.needs.filter((id) => !byId.has(id)))
      problems.push(memoryProblem({ says: 'unknown-skill.needed', skill: skill.id, need }, placeOf(index)));
  });
  for (const circle of findCircles(new Map([...byId].map(([id, { needs }]) => [id, needs])))) {
    const [first] = circle;
    problems.push(memoryProblem({ says: 'skill-circle', circle }, placeOf(indexOf.get(first!)!)));
  }
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { skills: inOrder([...byId.values()]), byId } };
}

/** Each skill after what it stands on. The list has no circles and no unknown names. */
function inOrder(skills: readonly Skill[]): readonly Skill[] {
  const placed = new Set<string>();
  const order: Skill[] = [];
  let left = skills;
  while (left.length > 0) {
    // Always the first that can stand, so that a list in a good order stays as it is.
    const rest: Skill[] = [];
    for (const skill of left) {
      if (skill.needs.every((id) => placed.has(id))) {
        placed.add(skill.id);
        order.push(skill);
      } else rest.push(skill);
    }
    left = rest;
  }
  return order;
}

/**
 * The skills a learner may practise now, in the order of the graph: those begun already, and those of which everything
 * they stand on is shown and not forgotten. A skill once begun stays open when something under it is forgotten: then that comes back first.
 */
export function openSkills(
  graph: SkillGraph,
  recalls: Recalls,
  at: number,
  target: number = TARGET,
): readonly string[] {
  return graph.skills
    .filter(
      ({ id, needs }) =>
        recallOf(recalls, id).kind === 'begun' ||
        needs.every((need) => carries(recallOf(recalls, need), at, target)),
    )
    .map(({ id }) => id);
}
