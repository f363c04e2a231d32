/** What goes when somebody's practice, a person, or a class is erased. Each runs inside a transaction. */
import type { Transaction } from 'kysely';
import { erasePapersOf, eraseSetsOf, HOMEWORK_TABLES } from './homework/erase.ts';
import { lockHistory } from './lock-history.ts';
import type { Tables } from './schema.ts';

const PRACTICE = ['answers', 'recalls', 'settings', 'issued_questions', 'histories'] as const;

/** Every table that something is erased from; a database that keeps remains of rows has them cleared out here. */
export const ERASED_TABLES = [
  ...PRACTICE,
  'people',
  'classes',
  'memberships',
  'sessions',
  'links',
  ...HOMEWORK_TABLES,
] as const satisfies readonly (keyof Tables)[];

export async function erasePractice(
  db: Transaction<Tables>,
  learner: string,
): Promise<{ readonly answers: number }> {
  const { answers } = await lockHistory(db, learner);
  for (const table of PRACTICE) await db.deleteFrom(table).where('learner', '=', learner).execute();
  return { answers };
}

/** Also papers; and memberships, sessions and links, which go with the person's own row. */
export async function erasePerson(
  db: Transaction<Tables>,
  learner: string,
): Promise<{ readonly answers: number }> {
  const erased = await erasePractice(db, learner);
  await erasePapersOf(db, learner);
  await db.deleteFrom('people').where('id', '=', learner).execute();
  return erased;
}

/** Also its sets and everybody's papers; and memberships, which go with the class's own row. */
export async function eraseClass(db: Transaction<Tables>, id: string): Promise<void> {
  await eraseSetsOf(db, id);
  await db.deleteFrom('classes').where('id', '=', id).execute();
}
