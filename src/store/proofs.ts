/** Answers that prove something, as they count. */
import type { Kysely, Transaction } from 'kysely';
import type { AnswerRecord } from '../../shared/practice.ts';
import { chunksOf } from './chunks.ts';
import { HISTORY_COLUMNS, historyLine } from './history-lines.ts';
import { ENTRY_COLUMNS, entryOf } from './read-entries.ts';
import type { Tables } from './schema.ts';
import type { Proof, ProvingAnswer, ProvingLine } from './types.ts';

/**
 * The proofs of those answers that prove something after all: an issued question is used up by the first of them, in their
 * order. Inside the transaction that keeps them, with the learner's history locked.
 */
export async function useProofs(
  db: Transaction<Tables>,
  learner: string,
  fresh: readonly AnswerRecord[],
  proofs: ReadonlyMap<AnswerRecord, Proof>,
): Promise<ReadonlyMap<AnswerRecord, Proof>> {
  const good = new Map<AnswerRecord, Proof>();
  for (const record of fresh) {
    const proof = proofs.get(record);
    if (!proof) continue;
    if (proof.issued !== undefined) {
      const { numDeletedRows } = await db
        .deleteFrom('issued_questions')
        .where('learner', '=', learner)
        .where('id', '=', proof.issued)
        .executeTakeFirst();
      if (numDeletedRows === 0n) continue;
    }
    good.set(record, proof);
  }
  return good;
}

const COLUMNS = [...HISTORY_COLUMNS, 'proof', 'proof_at'] as const;

/** See `Store.proofsOf`. */
export async function proofsOf(db: Kysely<Tables>, learner: string): Promise<readonly ProvingLine[]> {
  const rows = await db
    .selectFrom('answers')
    .select(COLUMNS)
    .where('learner', '=', learner)
    .where('proof', 'is not', null)
    .orderBy('number')
    .execute();
  return rows.map(({ proof, proof_at, ...row }) => ({
    ...historyLine({ ...row, counts_at: proof_at ?? row.counts_at }),
    source: proof!,
  }));
}

/** See `Store.provingAnswersOf`. */
export async function provingAnswersOf(
  db: Kysely<Tables>,
  learner: string,
  circuits: readonly string[],
): Promise<readonly ProvingAnswer[]> {
  const found: { readonly number: number; readonly answer: ProvingAnswer }[] = [];
  for (const some of chunksOf([...new Set(circuits)], 100)) {
    const rows = await db
      .selectFrom('answers')
      .select([...COLUMNS, ...ENTRY_COLUMNS])
      .where('learner', '=', learner)
      .where('proof', 'is not', null)
      .where('circuit', 'in', some)
      .execute();
    for (const row of rows) {
      const entry = entryOf(row);
      if (entry.kind === 'unreadable') continue;
      const { circuit, attempt } = historyLine(row);
      const mark = entry.correctedMark ?? entry.record.mark;
      const record = { ...entry.record, circuit, attempt, mark, at: row.proof_at ?? row.counts_at };
      found.push({ number: row.number, answer: { record, source: row.proof! } });
    }
  }
  return found.sort((one, other) => one.number - other.number).map(({ answer }) => answer);
}

/** See `Store.circuitsSeenBy`. */
export async function circuitsSeenBy(db: Kysely<Tables>, learner: string): Promise<ReadonlySet<string>> {
  const answered = await db
    .selectFrom('answers')
    .select('circuit')
    .distinct()
    .where('learner', '=', learner)
    .execute();
  const papers = await db
    .selectFrom('paper_circuits')
    .innerJoin('papers', 'papers.id', 'paper_circuits.paper')
    .select('circuit')
    .where('papers.learner', '=', learner)
    .execute();
  return new Set([...answered, ...papers].map(({ circuit }) => circuit));
}
