/** Sets: drafted, looked at, issued, withdrawn. */
import type { HomeworkSet } from '../../../shared/homework.ts';
import type { HomeworkWish, SetRow, SetView } from '../../../shared/homework-views.ts';
import type { Problem } from '../../../shared/problem.ts';
import { checkSet } from '../../homework/index.ts';
import type { Course } from '../../practice/index.ts';
import { type KeptSet, newId } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { ApiFailure, noSuchThing } from '../problems.ts';
import { checkIssued, checkTutor, isWithdrawn, tutorsSet } from './access.ts';
import { type Desk, workFor } from './desk.ts';
import { isHandedIn, outOf, setView, stateOf } from './views.ts';

export const badSet = (problems: readonly Problem[]): ApiFailure =>
  new ApiFailure({ says: 'bad-set', problems });

/** The skills of a wish, those of its topics first, each once. Of topics only skills that circuits can be made for. */
function skillsOf({ topics, skills }: HomeworkWish, course: Course): readonly string[] {
  const ofTopics = topics.flatMap((id) => {
    const topic = course.bank.topics.find((each) => each.id === id);
    if (!topic) throw new ApiFailure({ says: 'bad-set.noTopic', topic: id });
    const asked = topic.skills.filter(({ recipes }) => recipes.length > 0);
    if (asked.length === 0) throw new ApiFailure({ says: 'bad-set.noCircuits', topic: topic.title });
    return asked.map(({ id: skill }) => skill);
  });
  return [...new Set([...ofTopics, ...skills])];
}

async function setFrom(desk: Desk, id: string, wish: HomeworkWish): Promise<HomeworkSet> {
  const { title, items, level, marksEach, opensAt, closesAt, attempts, counts, help, review, supervised } =
    wish;
  const { course } = desk;
  const skills = skillsOf(wish, course);
  const made = await workFor(desk, id, 'choosePlaces', {
    skills: new Map([...course.skills].filter(([skill]) => skills.includes(skill))),
    request: { skills, items, level, marksEach, seed: id },
  });
  if (!made.ok) throw badSet(made.problems);
  const set = {
    id,
    title,
    places: [...made.value],
    opensAt,
    closesAt,
    attempts,
    counts,
    help,
    review,
    ...(supervised ? { supervised } : {}),
  };
  const checked = checkSet(set, course);
  if (!checked.ok) throw badSet(checked.problems);
  return checked.value;
}

export async function draftSet(
  desk: Desk,
  asking: Asking,
  classId: string,
  wish: HomeworkWish,
): Promise<SetView> {
  await checkTutor(desk, asking, classId);
  const set = await setFrom(desk, newId(), wish);
  const kept = await desk.store.homework.draft({ set, wish, class: classId, madeBy: asking.id });
  return setView(kept, desk.now());
}

export async function changeSet(
  desk: Desk,
  asking: Asking,
  id: string,
  wish: HomeworkWish,
): Promise<SetView> {
  const kept = await tutorsSet(desk, asking, id);
  const set = await setFrom(desk, id, wish);
  const changed = kept.issuedAt === null && (await desk.store.homework.changeDraft(set, wish));
  if (!changed) throw new ApiFailure({ says: 'already-issued' });
  return setView({ ...kept, set, wish }, desk.now());
}

export const viewSet = async (desk: Desk, asking: Asking, id: string): Promise<SetView> =>
  setView(await tutorsSet(desk, asking, id), desk.now());

export async function issueSet(desk: Desk, asking: Asking, id: string): Promise<SetView> {
  const kept = await tutorsSet(desk, asking, id);
  if (kept.withdrawnAt !== null) throw isWithdrawn();
  if (kept.issuedAt === null) {
    const checked = checkSet(kept.set, desk.course);
    if (!checked.ok) throw badSet(checked.problems);
    if (kept.set.closesAt <= desk.now()) throw new ApiFailure({ says: 'bad-set.closedAlready' });
  }
  const issued = await desk.store.homework.issue(id);
  if (!issued) throw noSuchThing();
  return setView(issued, desk.now());
}

/** Everybody gets longer; nobody is ever closed out earlier than was told. */
export async function closeLater(desk: Desk, asking: Asking, id: string, closesAt: number): Promise<SetView> {
  const kept = await tutorsSet(desk, asking, id);
  checkIssued(kept);
  if (desk.now() >= kept.set.closesAt) throw new ApiFailure({ says: 'closed.forGood' });
  if (closesAt < kept.set.closesAt) throw new ApiFailure({ says: 'bad-set.closesEarlier' });
  await desk.store.homework.closeLater(id, closesAt);
  return viewSet(desk, asking, id);
}

export async function withdrawSet(desk: Desk, asking: Asking, id: string): Promise<'erased' | 'withdrawn'> {
  await tutorsSet(desk, asking, id);
  const result = await desk.store.homework.withdraw(id);
  if (!result) throw noSuchThing();
  return result;
}

/** The sets of a class, the newest first. */
export async function setRows(desk: Desk, asking: Asking, classId: string): Promise<readonly SetRow[]> {
  await checkTutor(desk, asking, classId);
  const { homework, people } = desk.store;
  const sets = await homework.setsOf([classId]);
  const heads = await homework.papersIn(sets.map(({ set }) => set.id));
  const members = await people.classes.members(classId);
  const learners = new Set(members.flatMap(({ id, manner }) => (manner === 'learner' ? [id] : [])));
  const at = desk.now();
  return sets.map((kept: KeptSet): SetRow => {
    const { set, issuedAt } = kept;
    const own = heads.filter((head) => head.set === set.id && learners.has(head.learner));
    const countOf = (some: readonly { learner: string }[]): number =>
      new Set(some.map(({ learner }) => learner)).size;
    return {
      id: set.id,
      title: set.title,
      opensAt: set.opensAt,
      closesAt: set.closesAt,
      state: stateOf(kept, at),
      items: set.places.length,
      outOf: outOf(set),
      issuedAt,
      learners: learners.size,
      papers: countOf(own),
      handedIn: countOf(own.filter((head) => isHandedIn(set, head, at))),
    };
  });
}
