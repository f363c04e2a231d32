/** What comes back when: the summary at the end of a practice. */
import { dueAt, TARGET } from './recall.ts';
import { type Recalls, recallOf } from './replay.ts';
import type { SkillGraph } from './skills.ts';

export interface Return {
  readonly skill: string;
  /** Milliseconds since 1970; in the past for what is overdue. */
  readonly due: number;
}

/** Every skill of the graph that was begun, the soonest first; those of the same moment in the order of the graph. */
export function forecast(graph: SkillGraph, recalls: Recalls, target: number = TARGET): readonly Return[] {
  return graph.skills
    .flatMap(({ id }): Return[] => {
      const due = dueAt(recallOf(recalls, id), target);
      return due === null ? [] : [{ skill: id, due }];
    })
    .toSorted((one, other) => one.due - other.due);
}
