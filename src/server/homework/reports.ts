/** What tutors are told of a class: one set, all sets, and who can do what. */
import type { HomeworkSet, PaperMark } from '../../../shared/homework.ts';
import type { CompetenceView, SetReport, TermView } from '../../../shared/homework-views.ts';
import type { ProofsWanted } from '../../../shared/issued.ts';
import {
  type ClassIdea,
  type CompetenceMatrix,
  classReport,
  competenceMatrix,
  countingAttempt,
  marksFromShort,
  type PersonRow,
  phaseOf,
  refreshersDue,
  tellClassReport,
  tellTermReport,
  termReport,
} from '../../homework/index.ts';
import type { KeptSet, PaperHead } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { others, soon } from '../turns.ts';
import { checkTutor, tutorsSet } from './access.ts';
import { type Desk, workFor } from './desk.ts';
import { settle, settledHeads } from './settle.ts';
import { isHandedIn, stateOf } from './views.ts';

/** Milliseconds for which a report waits for papers that have still to be marked. */
const MARKING = 1500;
const DAY = 86_400_000;

type Named = SetReport['people'][number];

/** The learners of a class, by name. */
export async function learnersOf({ store }: Desk, classId: string): Promise<Named[]> {
  const members = await store.people.classes.members(classId);
  return members.flatMap(({ id, name, manner }) => (manner === 'learner' ? [{ id, name }] : []));
}

export interface Counting {
  readonly head: PaperHead;
  readonly mark: PaperMark;
}

/** Of each learner the attempt that counts, from short marks. */
export function countingIn(set: HomeworkSet, heads: readonly PaperHead[]): ReadonlyMap<string, Counting> {
  const attempts = new Map<string, Counting[]>();
  const markOf = marksFromShort(set);
  for (const head of heads) {
    if (head.set !== set.id || head.short === null) continue;
    const own = attempts.get(head.learner);
    const attempt = { head, mark: markOf(head, head.short) };
    if (own) own.push(attempt);
    else attempts.set(head.learner, [attempt]);
  }
  return new Map(
    [...attempts].map(([learner, own]) => {
      const mark = countingAttempt(
        set,
        own.map((attempt) => attempt.mark),
      );
      return [learner, own.find((attempt) => attempt.mark === mark)!];
    }),
  );
}

type ToldExample = SetReport['report']['ideas'][number]['example'];

/** The smallest drawing on which an idea showed, by what the short marks say of it. */
async function exampleOf(
  desk: Desk,
  { shownIn }: ClassIdea,
  counting: ReadonlyMap<string, Counting>,
): Promise<ToldExample> {
  const { store, words } = desk;
  let best: { id: string; item: number; hops: number } | undefined;
  for (const { learner, item } of shownIn) {
    const head = counting.get(learner)?.head;
    const hops = head?.short?.[item]?.[3];
    if (head && hops !== undefined && (!best || hops < best.hops)) best = { id: head.id, item, hops };
  }
  if (!best) return null;
  const item = (await store.homework.paper(best.id))?.paper.items[best.item];
  const marked = (await store.homework.markOf(best.id))?.items[best.item];
  if (!item || !marked) return null;
  const [mark] = await workFor(desk, best.id, 'tellMarks', {
    language: words.speech.language,
    marks: [{ question: item.question, mark: marked.mark }],
  });
  return { item, mark: mark! };
}

export async function reportOn(
  desk: Desk,
  kept: KeptSet,
): Promise<{ readonly people: Named[]; readonly waiting: number; readonly report: SetReport['report'] }> {
  const { set } = kept;
  const people = await learnersOf(desk, kept.class);
  const { heads, waiting } = await settledHeads(desk, [kept], soon(MARKING));
  const counting = countingIn(set, heads);
  const at = desk.now();
  const report = classReport({
    set,
    course: desk.course,
    learners: people.map(({ id }) => id),
    marks: [...counting.values()].map(({ mark }) => mark),
    waiting: heads.flatMap((head) =>
      head.short === null && isHandedIn(set, head, at) ? [head.learner] : [],
    ),
    closed: phaseOf(set, at) === 'closed',
  });
  const told = tellClassReport(desk.words, report);
  for (const [index, idea] of report.ideas.entries())
    told.ideas[index]!.example = await exampleOf(desk, idea, counting);
  return { people, waiting, report: told };
}

export async function setReport(desk: Desk, asking: Asking, id: string): Promise<SetReport> {
  const kept = await tutorsSet(desk, asking, id);
  const { people, waiting, report } = await reportOn(desk, kept);
  return {
    set: kept.set,
    state: stateOf(kept, desk.now()),
    people,
    waiting,
    report,
  };
}

/** All sets of a class that were issued and have opened, in order of time. */
export async function termOf(desk: Desk, asking: Asking, classId: string): Promise<TermView> {
  await checkTutor(desk, asking, classId);
  const at = desk.now();
  const sets = (await desk.store.homework.setsOf([classId]))
    .filter((kept) => ['open', 'closed'].includes(stateOf(kept, at)))
    .sort((one, other) => one.set.opensAt - other.set.opensAt || one.madeAt - other.madeAt);
  const people = await learnersOf(desk, classId);
  const { heads, waiting } = await settledHeads(desk, sets, soon(MARKING));
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

/** Hands to a learner's memory what of his homework has to be, so that what is told of him is up to date. */
async function rememberAll(desk: Desk, learners: readonly string[], until: number): Promise<void> {
  const { homework } = desk.store;
  const sets = new Map<string, KeptSet | null>();
  for (const learner of learners) {
    for (const head of await homework.papersOf(learner)) {
      if (head.rememberedAt !== null) continue;
      if (!sets.has(head.set)) sets.set(head.set, await homework.set(head.set));
      const kept = sets.get(head.set);
      if (kept) await settle(desk, kept, [head], until);
    }
  }
}

/** Who can do what at this moment, from all that they have answered and that proves it. One after another. */
export async function matrixOf(
  desk: Desk,
  people: readonly string[],
  wanted: ProofsWanted,
): Promise<CompetenceMatrix> {
  await rememberAll(desk, people, soon(MARKING));
  const at = desk.now();
  const { skills } = competenceMatrix(desk.course, [], at);
  const rows: PersonRow[] = [];
  for (const id of people) {
    const lines = await desk.store.proofsOf(id);
    const histories = [wanted === 'any' ? lines : lines.filter(({ source }) => source === wanted)];
    rows.push(...competenceMatrix(desk.course, [{ id, histories }], at).rows);
    await others();
  }
  return { at, skills, rows };
}

export async function competenceOf(
  desk: Desk,
  asking: Asking,
  classId: string,
  { days, proofs }: { readonly days: number; readonly proofs: ProofsWanted },
): Promise<CompetenceView> {
  await checkTutor(desk, asking, classId);
  const people = await learnersOf(desk, classId);
  const matrix = await matrixOf(
    desk,
    people.map(({ id }) => id),
    proofs,
  );
  return {
    people,
    proofs,
    matrix: matrix as CompetenceView['matrix'],
    refreshers: [...refreshersDue(matrix, matrix.at + days * DAY)],
  };
}
