import type { Kysely, Transaction } from 'kysely';
import { chunksOf } from '../chunks.ts';
import type { Tables } from '../schema.ts';
import { naming } from '../whose.ts';
import { HEAD_COLUMNS, keptPaper, keptSet, paperHead } from './rows.ts';
import type { KeptPaper, KeptSet, NewPaper, PaperHead, PaperKept } from './types.ts';

/** Ends the transaction without anything having been kept. */
class CircuitTaken extends Error {}

/** Circuits in the order of their places, so that no two makers wait for each other. */
async function takeCircuits(db: Transaction<Tables>, { id, paper }: NewPaper): Promise<void> {
  const rows = paper.items.map(({ circuit }, place) => ({ set: paper.set, place, circuit, paper: id }));
  const taken = await db
    .insertInto('paper_circuits')
    .values(rows)
    .onConflict((conflict) => conflict.doNothing())
    .returning('place')
    .execute();
  if (taken.length < rows.length) throw new CircuitTaken();
}

/** See `HomeworkStore.keepPaper`. */
export async function keepPaper(db: Kysely<Tables>, made: NewPaper, now: number): Promise<PaperKept> {
  const { id, code, paper, whose } = made;
  const { set, learner, attempt } = paper;
  try {
    return await db.transaction().execute(async (transaction): Promise<PaperKept> => {
      const row = await naming(
        transaction
          .insertInto('papers')
          .values({
            id,
            code,
            set,
            learner,
            person: whose === 'person' ? learner : null,
            attempt,
            made_at: now,
            begun_at: null,
            submitted_at: null,
            saves: 0,
            marked_at: null,
            remembered_at: null,
            short_json: null,
            mark_json: null,
            paper_json: JSON.stringify(paper),
          })
          .onConflict((conflict) => conflict.doNothing())
          .returning(HEAD_COLUMNS)
          .executeTakeFirst(),
      );
      if (row) {
        await takeCircuits(transaction, made);
        return { result: 'made', head: paperHead(row) };
      }
      const there = await transaction
        .selectFrom('papers')
        .select(HEAD_COLUMNS)
        .where('set', '=', set)
        .where('learner', '=', learner)
        .where('attempt', '=', attempt)
        .executeTakeFirst();
      return there ? { result: 'already', head: paperHead(there) } : { result: 'code-taken' };
    });
  } catch (error) {
    if (error instanceof CircuitTaken) return { result: 'circuit-taken' };
    throw error;
  }
}

/** See `HomeworkStore.circuitsIn`. */
export async function circuitsIn(
  db: Kysely<Tables>,
  set: string,
): Promise<ReadonlyMap<number, ReadonlySet<string>>> {
  const rows = await db
    .selectFrom('paper_circuits')
    .select(['place', 'circuit'])
    .where('set', '=', set)
    .execute();
  const places = new Map<number, Set<string>>();
  for (const { place, circuit } of rows) {
    const known = places.get(place);
    if (known) known.add(circuit);
    else places.set(place, new Set([circuit]));
  }
  return places;
}

/** See `HomeworkStore.papersIn`. */
export async function papersIn(db: Kysely<Tables>, sets: readonly string[]): Promise<readonly PaperHead[]> {
  const found: PaperHead[] = [];
  for (const some of chunksOf(sets, 200)) {
    const rows = await db
      .selectFrom('papers')
      .select(HEAD_COLUMNS)
      .where('set', 'in', some)
      .orderBy('set')
      .orderBy('learner')
      .orderBy('attempt')
      .execute();
    for (const row of rows) found.push(paperHead(row));
  }
  return found;
}

export async function papersOf(db: Kysely<Tables>, learner: string): Promise<readonly PaperHead[]> {
  const rows = await db
    .selectFrom('papers')
    .select(HEAD_COLUMNS)
    .where('learner', '=', learner)
    .orderBy('made_at')
    .orderBy('id')
    .execute();
  return rows.map(paperHead);
}

/** See `HomeworkStore.unsubmittedOf`. */
export async function unsubmittedOf(
  db: Kysely<Tables>,
  learner: string,
): Promise<readonly { readonly paper: PaperHead; readonly kept: KeptSet }[]> {
  const rows = await db
    .selectFrom('papers')
    .select(HEAD_COLUMNS)
    .where('learner', '=', learner)
    .where('submitted_at', 'is', null)
    .where('marked_at', 'is', null)
    .execute();
  const found: { paper: PaperHead; kept: KeptSet }[] = [];
  for (const row of rows) {
    const set = await db
      .selectFrom('sets')
      .selectAll()
      .where('id', '=', row.set)
      .where('issued_at', 'is not', null)
      .where('withdrawn_at', 'is', null)
      .executeTakeFirst();
    if (set) found.push({ paper: paperHead(row), kept: keptSet(set) });
  }
  return found;
}

export async function headById(db: Kysely<Tables>, id: string): Promise<PaperHead | null> {
  const row = await db.selectFrom('papers').select(HEAD_COLUMNS).where('id', '=', id).executeTakeFirst();
  return row ? paperHead(row) : null;
}

export async function paperById(db: Kysely<Tables>, id: string): Promise<KeptPaper | null> {
  const row = await db
    .selectFrom('papers')
    .select([...HEAD_COLUMNS, 'paper_json'])
    .where('id', '=', id)
    .executeTakeFirst();
  return row ? keptPaper(row) : null;
}

export async function paperByCode(db: Kysely<Tables>, set: string, code: string): Promise<KeptPaper | null> {
  const row = await db
    .selectFrom('papers')
    .select([...HEAD_COLUMNS, 'paper_json'])
    .where('set', '=', set)
    .where('code', '=', code)
    .executeTakeFirst();
  return row ? keptPaper(row) : null;
}

/** See `HomeworkStore.begin`. */
export async function begin(db: Kysely<Tables>, paper: string, now: number): Promise<number> {
  const row = await db
    .updateTable('papers')
    .set(({ fn, val, ref }) => ({ begun_at: fn.coalesce(ref('begun_at'), val(now)) }))
    .where('id', '=', paper)
    .returning('begun_at')
    .executeTakeFirstOrThrow();
  return row.begun_at ?? now;
}
