import type { Kysely } from 'kysely';
import type { IssuedQuestion } from '../../shared/issued.ts';
import { chunksOf } from './chunks.ts';
import { newId } from './new-id.ts';
import type { IssuedQuestionsTable, Tables } from './schema.ts';

/** How long an issued question may wait for its answer. */
export const ISSUED_LASTS = 30 * 86_400_000;

const questionIn = ({ id, skill, reviews, issued_at, until }: IssuedQuestionsTable): IssuedQuestion => ({
  id,
  skill,
  reviews,
  issuedAt: issued_at,
  until,
});

export const issuedQuestionsOn = (db: Kysely<Tables>, now: () => number) => ({
  /** Issues questions, and clears out the learner's that nobody answered in time. */
  async issue(
    learner: string,
    wanted: readonly Pick<IssuedQuestion, 'skill' | 'reviews'>[],
  ): Promise<readonly IssuedQuestion[]> {
    const at = now();
    await db.deleteFrom('issued_questions').where('learner', '=', learner).where('until', '<=', at).execute();
    const made = wanted.map((one) => ({ ...one, id: newId(), issuedAt: at, until: at + ISSUED_LASTS }));
    for (const some of chunksOf(made, 100))
      await db
        .insertInto('issued_questions')
        .values(some.map(({ issuedAt, ...one }) => ({ ...one, learner, issued_at: issuedAt })))
        .execute();
    return made;
  },

  /** How many wait to be answered, by skill. */
  async waiting(learner: string): Promise<ReadonlyMap<string, number>> {
    const rows = await db
      .selectFrom('issued_questions')
      .select(['skill', ({ fn }) => fn.countAll<number>().as('count')])
      .where('learner', '=', learner)
      .where('until', '>', now())
      .groupBy('skill')
      .execute();
    return new Map(rows.map(({ skill, count }) => [skill, Number(count)]));
  },

  /** Those of these that were issued to the learner and may still be answered. */
  async find(learner: string, ids: readonly string[]): Promise<ReadonlyMap<string, IssuedQuestion>> {
    const found = new Map<string, IssuedQuestion>();
    for (const some of chunksOf(ids, 200)) {
      const rows = await db
        .selectFrom('issued_questions')
        .selectAll()
        .where('learner', '=', learner)
        .where('id', 'in', some)
        .where('until', '>', now())
        .execute();
      for (const row of rows) found.set(row.id, questionIn(row));
    }
    return found;
  },

  /** All that wait, for an export. */
  async all(learner: string): Promise<readonly IssuedQuestion[]> {
    const rows = await db
      .selectFrom('issued_questions')
      .selectAll()
      .where('learner', '=', learner)
      .orderBy('issued_at')
      .orderBy('id')
      .execute();
    return rows.map(questionIn);
  },
});

export type IssuedQuestions = ReturnType<typeof issuedQuestionsOn>;
