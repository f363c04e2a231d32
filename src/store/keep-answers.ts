import type { Kysely, Transaction } from 'kysely';
import type { AnswerRecord } from '../../shared/practice.ts';
import { chunksOf, groupsOf } from './chunks.ts';
import { updateRecalls } from './derive-recalls.ts';
import { lockHistory } from './lock-history.ts';
import { RECORD_VERSION, writeRecord } from './record-text.ts';
import type { Tables } from './schema.ts';
import type { Kept } from './types.ts';

interface Numbered {
  readonly record: AnswerRecord;
  readonly number: number;
}

/** The numbers of those of these ids that are kept already. */
async function knownOf(
  db: Transaction<Tables>,
  learner: string,
  ids: readonly string[],
): Promise<Map<string, number>> {
  const known = new Map<string, number>();
  for (const some of chunksOf(ids, 500)) {
    const rows = await db
      .selectFrom('answers')
      .select(['id', 'number'])
      .where('learner', '=', learner)
      .where('id', 'in', some)
      .execute();
    for (const { id, number } of rows) known.set(id, number);
  }
  return known;
}

async function insert(db: Transaction<Tables>, fresh: readonly Numbered[], arrivedAt: number): Promise<void> {
  for (const some of chunksOf(fresh, 100)) {
    await db
      .insertInto('answers')
      .values(
        some.map(({ record, number }) => ({
          learner: record.learner,
          number,
          id: record.id,
          arrived_at: arrivedAt,
          at: record.at,
          skill: record.skill,
          circuit: record.circuit,
          kind: record.question.kind,
          share: record.mark.share,
          grade: record.grade,
          attempt_json: JSON.stringify(record.attempt),
          record_version: RECORD_VERSION,
          record_json: writeRecord(record),
          corrected_mark_json: null,
        })),
      )
      .execute();
  }
}

/** Keeps what one learner sends; gives a result for each, in order. Numbers follow the order of `records`. */
async function keepOf(
  db: Transaction<Tables>,
  learner: string,
  records: readonly AnswerRecord[],
  now: number,
): Promise<readonly Kept[]> {
  const { answers } = await lockHistory(db, learner);
  const numbers = await knownOf(db, learner, [...new Set(records.map(({ id }) => id))]);
  const fresh: Numbered[] = [];
  const results = records.map((record): Kept => {
    const known = numbers.get(record.id);
    if (known !== undefined) return { kept: false, number: known };
    const number = answers + fresh.length + 1;
    numbers.set(record.id, number);
    fresh.push({ record, number });
    return { kept: true, number };
  });
  if (fresh.length === 0) return results;
  await insert(db, fresh, now);
  await db
    .updateTable('histories')
    .set({ answers: answers + fresh.length })
    .where('learner', '=', learner)
    .execute();
  const lines = fresh.map(({ record: { id, skill, circuit, at, attempt }, number }) => ({
    id,
    skill,
    circuit,
    at,
    attempt,
    number,
  }));
  await updateRecalls(db, learner, lines, now);
  return results;
}

/** Keeps answers of any learners in one transaction, with the recall states that follow; see `Store.keepAnswers`. */
export function keepAnswers(
  db: Kysely<Tables>,
  records: readonly AnswerRecord[],
  now: number,
): Promise<readonly Kept[]> {
  return db.transaction().execute(async (transaction) => {
    const places = groupsOf([...records.keys()], (place) => records[place]!.learner);
    const results = new Map<number, Kept>();
    for (const learner of [...places.keys()].sort()) {
      const own = places.get(learner)!;
      const kept = await keepOf(
        transaction,
        learner,
        own.map((place) => records[place]!),
        now,
      );
      kept.forEach((result, at) => {
        results.set(own[at]!, result);
      });
    }
    return [...records.keys()].map((place) => results.get(place)!);
  });
}
