import type { TermView } from '../../../../shared/homework-views.ts';
import { tellTermReport, termReport } from '../../../homework/index.ts';
import type { Asking } from '../../people/gate.ts';
import { checkTutor } from '../access.ts';
import { countingIn } from '../counting.ts';
import type { Desk } from '../desk.ts';
import { learnersOf } from '../learners.ts';
import { settledHeads } from '../settle.ts';
import { stateOf } from '../views.ts';
import { reportBy } from './settled.ts';

/** All sets of a class that were issued and have opened, in order of time. */
export async function termOf(desk: Desk, asking: Asking, classId: string): Promise<TermView> {
  await checkTutor(desk, asking, classId);
  const at = desk.now();
  const sets = (await desk.store.homework.setsOf([classId]))
    .filter((kept) => ['open', 'closed'].includes(stateOf(kept, at)))
    .sort((one, other) => one.set.opensAt - other.set.opensAt || one.madeAt - other.madeAt);
  const people = await learnersOf(desk, classId);
  const { heads, waiting } = await settledHeads(desk, sets, reportBy());
  const report = termReport({
    course: desk.course,
    learners: people.map(({ id }) => id),
    sets: sets.map(({ set }) => ({
      set,
      marks: [...countingIn(set, heads).values()].map(({ mark }) => mark),
    })),
  });
  return {
    people,
    sets: sets.map(({ set: { id, title, opensAt, closesAt } }) => ({ id, title, opensAt, closesAt })),
    waiting,
    report: tellTermReport(desk.words, report),
  };
}
