import { isDeepStrictEqual } from 'node:util';
import { type Kysely, sql } from 'kysely';
import { deriveAll, recallIn } from './derive-recalls.ts';
import { attemptIn, HISTORY_COLUMNS, historyLine } from './history-lines.ts';
import { entryOf, rowsAfter } from './read-entries.ts';
import type { Tables } from './schema.ts';
import type { Fault, LearnerSummary } from './types.ts';

const AT_ONCE = 200;
/** Whoever practises where nobody signs in. */
const ALONE = 'me';

/** Numbers run from 1 without gaps, and every record can be read. */
async function checkAnswers(db: Kysely<Tables>, { learner, answers }: LearnerSummary): Promise<Fault[]> {
  const faults: Fault[] = [];
  let expected = 1;
  for (let after = 0; ; ) {
    const rows = await rowsAfter(db, learner, after, AT_ONCE);
    if (rows.length === 0) break;
    for (const row of rows) {
      if (row.number !== expected)
        faults.push({ learner, fault: { says: 'answerMissing', missing: expected, next: row.number } });
      expected = row.number + 1;
      const { number, id } = row;
      const entry = entryOf(row);
      if (entry.kind === 'unreadable')
        faults.push({ learner, fault: { says: 'answerUnreadable', number, id, why: entry.why } });
      else if (entry.record.id !== row.id || entry.record.learner !== learner)
        faults.push({ learner, fault: { says: 'anothersRecord', number, id } });
    }
    after = rows.at(-1)!.number;
  }
  if (expected - 1 !== answers)
    faults.push({ learner, fault: { says: 'otherCount', answers, last: expected - 1 } });
  return faults;
}

/** Recall states are those that the answers lead to. Emptied ones are worked out when they are wanted. */
async function checkRecalls(db: Kysely<Tables>, learner: string): Promise<Fault[]> {
  const rows = await db
    .selectFrom('answers')
    .select(HISTORY_COLUMNS)
    .where('learner', '=', learner)
    .orderBy('number')
    .execute();
  const kept = await db
    .selectFrom('recalls')
    .select(['skill', 'recall_json'])
    .where('learner', '=', learner)
    .execute();
  const unreadable = rows
    .filter(({ attempt_json }) => !attemptIn(attempt_json))
    .map(({ number, id }): Fault => ({ learner, fault: { says: 'attemptUnreadable', number, id } }));
  const derived = deriveAll(rows.map(historyLine));
  const bySkill = new Map(kept.map((row) => [row.skill, row]));
  const wrong = [...derived].filter(([skill, recall]) => {
    const row = bySkill.get(skill);
    return row?.recall_json !== '' && !isDeepStrictEqual(row ? recallIn(row) : null, recall);
  });
  const extra = kept.filter(({ skill }) => !derived.has(skill));
  const states = [...wrong.map(([skill]) => skill), ...extra.map(({ skill }) => skill)].map(
    (skill): Fault => ({ learner, fault: { says: 'otherRecall', skill } }),
  );
  return [...unreadable, ...states];
}

/** What is known of a learner, held against itself. */
export const checkLearner = async (db: Kysely<Tables>, learner: LearnerSummary): Promise<Fault[]> => [
  ...(await checkAnswers(db, learner)),
  ...(await checkRecalls(db, learner.learner)),
];

/** Histories and papers that are no person's, where there are people: of somebody who was erased. */
async function checkPeople(db: Kysely<Tables>): Promise<Fault[]> {
  const { rows } = await sql<{ learner: string }>`
    select learner from (
      select learner from histories where person is null union select learner from papers where person is null
    ) as nobodys where learner <> ${ALONE} and exists (select id from people)`.execute(db);
  return rows.map(({ learner }) => ({ learner, fault: { says: 'noSuchPerson' } }));
}

/** Answers, recall states and settings that belong to nobody. */
export async function checkOrphans(db: Kysely<Tables>): Promise<Fault[]> {
  const { rows } = await sql<{ learner: string }>`
    select learner from (
      select learner from answers union select learner from recalls union select learner from settings
    ) as named where learner not in (select learner from histories)`.execute(db);
  const nobodys = rows.map(({ learner }): Fault => ({ learner, fault: { says: 'noHistory' } }));
  return [...nobodys, ...(await checkPeople(db))];
}
