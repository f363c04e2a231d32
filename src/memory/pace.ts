/** How fast new skills are begun. */
import { type Recalls, recallOf } from './replay.ts';
import type { SkillGraph } from './skills.ts';
import { ONE_PRACTICE_DAY } from './time.ts';

/** How many skills are begun in a day unless the learner or the tutor says otherwise. Common practice, no source. */
export const NEW_A_DAY = 3;

/** How many skills of the graph were begun on the practice day of this moment. */
export const begunOnDayOf = (graph: SkillGraph, recalls: Recalls, at: number): number =>
  graph.skills.filter(({ id }) => {
    const recall = recallOf(recalls, id);
    return recall.kind === 'begun' && Math.abs(at - recall.firstAt) < ONE_PRACTICE_DAY;
  }).length;
