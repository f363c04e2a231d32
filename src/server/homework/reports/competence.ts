import type { CompetenceView } from '../../../../shared/homework-views.ts';
import type { ProofsWanted } from '../../../../shared/issued.ts';
import {
  type CompetenceMatrix,
  competenceMatrix,
  type PersonRow,
  refreshersDue,
} from '../../../homework/index.ts';
import type { KeptSet } from '../../../store/index.ts';
import type { Asking } from '../../people/gate.ts';
import { others } from '../../turns.ts';
import { checkTutor } from '../access.ts';
import type { Desk } from '../desk.ts';
import { learnersOf } from '../learners.ts';
import { settle } from '../settle.ts';
import { reportBy } from './settled.ts';

const DAY = 86_400_000;

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
  await rememberAll(desk, people, reportBy());
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
