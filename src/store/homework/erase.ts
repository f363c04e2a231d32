import type { Transaction } from 'kysely';
import type { Tables } from '../schema.ts';

/** What belongs to one paper, by its id. */
const OF_PAPER = ['saved_answers', 'hints', 'overrides', 'paper_circuits', 'tried_elsewhere'] as const;
export const HOMEWORK_TABLES = [...OF_PAPER, 'papers', 'sets'] as const satisfies readonly (keyof Tables)[];

/** Erases the papers of a learner, with answers, marks and overrides. Sets are their class's and stay. */
export async function erasePapersOf(db: Transaction<Tables>, learner: string): Promise<void> {
  const papers = db.selectFrom('papers').select('id').where('learner', '=', learner);
  for (const table of OF_PAPER) await db.deleteFrom(table).where('paper', 'in', papers).execute();
  await db.deleteFrom('papers').where('learner', '=', learner).execute();
}

/** Erases the sets of a class with all papers. */
export async function eraseSetsOf(db: Transaction<Tables>, classId: string): Promise<void> {
  const sets = db.selectFrom('sets').select('id').where('class', '=', classId);
  const papers = db.selectFrom('papers').select('id').where('set', 'in', sets);
  for (const table of OF_PAPER) await db.deleteFrom(table).where('paper', 'in', papers).execute();
  await db.deleteFrom('papers').where('set', 'in', sets).execute();
  await db.deleteFrom('sets').where('class', '=', classId).execute();
}
