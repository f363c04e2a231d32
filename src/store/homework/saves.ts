import type { Kysely, Transaction } from 'kysely';
import type { Tables } from '../schema.ts';
import { keptAnswer, setIn } from './rows.ts';
import type { Handed, KeptAnswer, NewSave, Saved } from './types.ts';

interface Locked {
  readonly submittedAt: number | null;
  readonly saves: number;
  readonly closed: boolean;
  /** Now, or when the last answer was saved, where the clock was set back since: later answers are never before earlier ones. */
  readonly at: number;
}

/**
 * Keeps everybody else who saves on this paper or hands it in away until the transaction ends. The first thing in it, for
 * the reasons told at `lockHistory`.
 */
async function lockPaper(db: Transaction<Tables>, paper: string, now: () => number): Promise<Locked> {
  const row = await db
    .updateTable('papers')
    .set(({ ref }) => ({ saves: ref('saves') }))
    .where('id', '=', paper)
    .returning(['set', 'submitted_at', 'marked_at', 'saves'])
    .executeTakeFirstOrThrow();
  const { set_json } = await db
    .selectFrom('sets')
    .select('set_json')
    .where('id', '=', row.set)
    .executeTakeFirstOrThrow();
  const last = await db
    .selectFrom('saved_answers')
    .select('at')
    .where('paper', '=', paper)
    .where('number', '=', row.saves)
    .executeTakeFirst();
  // Asked only when the paper is locked: one who waited for it has the time at which it is his turn.
  const at = Math.max(now(), last?.at ?? 0);
  return {
    submittedAt: row.submitted_at,
    saves: row.saves,
    // One that was marked has been closed, even when the clock says otherwise again.
    closed: row.marked_at !== null || at >= setIn(set_json).closesAt,
    at,
  };
}

async function numbersOf(
  db: Transaction<Tables>,
  paper: string,
  answers: readonly NewSave[],
): Promise<Map<string, number>> {
  const rows = await db
    .selectFrom('saved_answers')
    .select(['id', 'number'])
    .where('paper', '=', paper)
    .where(
      'id',
      'in',
      answers.map(({ id }) => id),
    )
    .execute();
  return new Map(rows.map(({ id, number }) => [id, number]));
}

/** See `HomeworkStore.save`. */
export function save(
  db: Kysely<Tables>,
  paper: string,
  answers: readonly NewSave[],
  now: () => number,
): Promise<Saved> {
  return db.transaction().execute(async (transaction): Promise<Saved> => {
    const { submittedAt, saves, closed, at } = await lockPaper(transaction, paper, now);
    const numbers = await numbersOf(transaction, paper, answers);
    const fresh: (NewSave & { readonly number: number })[] = [];
    const kept = answers.map((answer) => {
      const known = numbers.get(answer.id);
      if (known !== undefined) return { kept: false, number: known };
      const number = saves + fresh.length + 1;
      numbers.set(answer.id, number);
      fresh.push({ ...answer, number });
      return { kept: true, number };
    });
    if (fresh.length === 0) return { result: 'saved', at, kept };
    if (submittedAt !== null) return { result: 'submitted' };
    if (closed) return { result: 'closed' };
    await transaction
      .insertInto('saved_answers')
      .values(
        fresh.map(({ id, item, number, answer, secondsUsed }) => ({
          paper,
          number,
          id,
          item,
          at,
          seconds: secondsUsed,
          answer_json: JSON.stringify(answer),
        })),
      )
      .execute();
    await transaction
      .updateTable('papers')
      .set({ saves: saves + fresh.length })
      .where('id', '=', paper)
      .execute();
    return { result: 'saved', at, kept };
  });
}

/** See `HomeworkStore.submit`. */
export function submit(db: Kysely<Tables>, paper: string, now: () => number): Promise<Handed> {
  return db.transaction().execute(async (transaction): Promise<Handed> => {
    const { submittedAt, closed, at } = await lockPaper(transaction, paper, now);
    if (submittedAt !== null) return { result: 'already', submittedAt };
    if (closed) return { result: 'closed' };
    await transaction.updateTable('papers').set({ submitted_at: at }).where('id', '=', paper).execute();
    return { result: 'submitted', submittedAt: at };
  });
}

/** See `HomeworkStore.hint`. */
export function hint(
  db: Kysely<Tables>,
  paper: string,
  item: number,
  now: () => number,
): Promise<'noted' | 'closed' | 'submitted'> {
  return db.transaction().execute(async (transaction) => {
    const { submittedAt, closed, at } = await lockPaper(transaction, paper, now);
    if (submittedAt !== null) return 'submitted';
    if (closed) return 'closed';
    await transaction
      .insertInto('hints')
      .values({ paper, item, at })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
    return 'noted';
  });
}

export async function hintsOf(db: Kysely<Tables>, paper: string): Promise<readonly number[]> {
  const rows = await db
    .selectFrom('hints')
    .select('item')
    .where('paper', '=', paper)
    .orderBy('item')
    .execute();
  return rows.map(({ item }) => item);
}

export async function answersOf(db: Kysely<Tables>, paper: string): Promise<readonly KeptAnswer[]> {
  const hints = new Set(await hintsOf(db, paper));
  const rows = await db
    .selectFrom('saved_answers')
    .selectAll()
    .where('paper', '=', paper)
    .orderBy('number')
    .execute();
  return rows.map((row) => keptAnswer(row, hints));
}

/** See `HomeworkStore.itemsSavedOn`. */
export async function itemsSavedOn(db: Kysely<Tables>, paper: string): Promise<number> {
  const { items } = await db
    .selectFrom('saved_answers')
    .select(({ fn }) => fn.count<number>('item').distinct().as('items'))
    .where('paper', '=', paper)
    .executeTakeFirstOrThrow();
  return items;
}

/** See `HomeworkStore.itemsSaved`. */
export async function itemsSaved(db: Kysely<Tables>, set: string): Promise<ReadonlyMap<string, number>> {
  const rows = await db
    .selectFrom('saved_answers')
    .innerJoin('papers', 'papers.id', 'saved_answers.paper')
    .select(({ fn }) => [
      'saved_answers.paper',
      fn.count<number>('saved_answers.item').distinct().as('items'),
    ])
    .where('papers.set', '=', set)
    .groupBy('saved_answers.paper')
    .execute();
  return new Map(rows.map(({ paper, items }) => [paper, items]));
}
