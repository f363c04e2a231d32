/** Questions issued to a learner ahead, so that practice proves something without network too. */
import { ISSUED_AHEAD, type IssuedQuestion } from '../../../shared/issued.ts';
import { openSkills, recallOf } from '../../memory/index.ts';
import { growthOf, withPlacement } from '../../practice/index.ts';
import type { Service } from '../service.ts';

/** Questions of one skill that may wait for a learner's answer: some devices' supplies, and not a choice of the easiest. */
const MOST_WAITING = 3 * ISSUED_AHEAD;

/** @param have - how many the device still has, by skill */
export async function issueQuestions(
  { store, course, now }: Service,
  learner: string,
  have: Readonly<Record<string, number>>,
): Promise<readonly IssuedQuestion[]> {
  const { placement } = await store.settingsOf(learner);
  const recalls = withPlacement(await store.recallsOf(learner), placement);
  const open = new Set(openSkills(course.graph, recalls, now()));
  const begun = (id: string): boolean => open.has(id) || recallOf(recalls, id).kind === 'begun';
  const waiting = await store.issued.waiting(learner);
  const wanted = course.graph.skills
    .filter(
      ({ id, needs }) =>
        (course.skills.get(id)?.recipes.length ?? 0) > 0 && (begun(id) || needs.every(begun)),
    )
    .flatMap(({ id }) => {
      const there = have[id] ?? 0;
      const room = Math.min(ISSUED_AHEAD - there, MOST_WAITING - (waiting.get(id) ?? 0));
      // As large as the learner has come to: whether circuits may grow, the answers to these will tell.
      const reviews = growthOf(recallOf(recalls, id));
      return Array.from({ length: Math.max(0, room) }, () => ({ skill: id, reviews }));
    });
  return wanted.length > 0 ? store.issued.issue(learner, wanted) : [];
}
