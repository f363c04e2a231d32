import type { Kysely, Transaction } from 'kysely';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Mark } from '../../shared/question.ts';
import { gradeOf } from '../memory/index.ts';
import { partsCounted } from '../practice/parts-counted.ts';
import { rebuildRecalls } from './derive-recalls.ts';
import { shortColumns } from './keep-answers.ts';
import { lockHistory } from './lock-history.ts';
import { entryOf, rowsAfter } from './read-entries.ts';
import { sameMark } from './same-mark.ts';
import type { Tables } from './schema.ts';
import type { AnswerEntry, Corrected } from './types.ts';

const AT_ONCE = 100;

interface Correction {
  readonly entry: Extract<AnswerEntry, { kind: 'answer' }>;
  readonly mark: Mark;
}

async function note(
  db: Transaction<Tables>,
  learner: string,
  { entry: { number, record }, mark }: Correction,
): Promise<void> {
  const attempt = { ...record.attempt, share: mark.share, parts: partsCounted(record.question, mark) };
  await db
    .updateTable('answers')
    .set({
      corrected_mark_json: sameMark(mark, record.mark) ? null : JSON.stringify(mark),
      share: mark.share,
      grade: gradeOf(attempt).grade,
      attempt_json: JSON.stringify(attempt),
      ...shortColumns(mark),
    })
    .where('learner', '=', learner)
    .where('number', '=', number)
    .execute();
}

/** See `Store.correctMarks`; for one learner. */
export async function correctMarksOf(
  db: Kysely<Tables>,
  learner: string,
  markAgain: (record: AnswerRecord) => Mark | null,
): Promise<Corrected> {
  const corrections: Correction[] = [];
  let marked = 0;
  let left = 0;
  for (let after = 0; ; ) {
    const rows = await rowsAfter(db, learner, after, AT_ONCE);
    if (rows.length === 0) break;
    for (const row of rows) {
      const entry = entryOf(row);
      const mark = entry.kind === 'answer' ? markAgain(entry.record) : null;
      if (entry.kind !== 'answer' || !mark) {
        left++;
        continue;
      }
      marked++;
      if (!sameMark(mark, entry.correctedMark ?? entry.record.mark)) corrections.push({ entry, mark });
    }
    after = rows.at(-1)!.number;
  }
  if (corrections.length > 0) {
    await db.transaction().execute(async (transaction) => {
      const { corrections: times } = await lockHistory(transaction, learner);
      for (const correction of corrections) await note(transaction, learner, correction);
      await transaction
        .updateTable('histories')
        .set({ corrections: times + 1 })
        .where('learner', '=', learner)
        .execute();
      await rebuildRecalls(transaction, learner);
    });
  }
  const changed = corrections.map(({ entry: { number, id } }) => ({ learner, number, id }));
  return { marked, left, changed };
}
