/**
 * Recall states as they follow from the answers: all of a skill's answers in the order of the moments at which they count
 * (`countsAt`), those of the same moment in the order in which they arrived.
 */
import type { Kysely, Transaction } from 'kysely';
import { type Recall, recall as recallSchema } from '../../shared/memory.ts';
import { afterAnswer, mergeHistories, newRecall, type Recalls, replay } from '../memory/index.ts';
import { chunksOf, groupsOf } from './chunks.ts';
import { HISTORY_COLUMNS, type HistoryLine, historyLine } from './history-lines.ts';
import { others } from './others.ts';
import type { RecallsTable, Tables } from './schema.ts';
import type { StandingOf } from './types.ts';

/** The states that whole histories lead to, by skill. Lines are in order of arrival. */
export const deriveAll = (lines: readonly HistoryLine[]): Recalls => replay(mergeHistories([lines]));

/** The state in a row; null where it can't be read any more, or was emptied, and has to be derived. */
export function recallIn({ recall_json }: Pick<RecallsTable, 'recall_json'>): Recall | null {
  try {
    return recallSchema.parse(JSON.parse(recall_json));
  } catch {
    return null;
  }
}

/** Writes states over those that are there. */
export async function putRecalls(
  db: Transaction<Tables>,
  learner: string,
  states: Iterable<readonly [skill: string, Recall]>,
): Promise<void> {
  const rows = [...states].map(([skill, recall]) => ({
    learner,
    skill,
    recall_json: JSON.stringify(recall),
  }));
  for (const values of chunksOf(rows, 100)) {
    await db
      .insertInto('recalls')
      .values(values)
      .onConflict((conflict) =>
        conflict
          .columns(['learner', 'skill'])
          .doUpdateSet(({ ref }) => ({ recall_json: ref('excluded.recall_json') })),
      )
      .execute();
  }
}

/** The states that are kept of these skills; null where one can't be read. */
async function statesOf(
  db: Transaction<Tables>,
  learner: string,
  skills: readonly string[],
): Promise<ReadonlyMap<string, Recall | null>> {
  const states = new Map<string, Recall | null>();
  for (const some of chunksOf(skills, 200)) {
    const rows = await db
      .selectFrom('recalls')
      .select(['skill', 'recall_json'])
      .where('learner', '=', learner)
      .where('skill', 'in', some)
      .execute();
    for (const row of rows) states.set(row.skill, recallIn(row));
  }
  return states;
}

/** The state after these answers where nothing but they has to be looked at; null where the whole history has to be. */
function continued(before: Recall | null, lines: readonly HistoryLine[]): Recall | null {
  if (!before) return null;
  let recall = before;
  for (const line of mergeHistories([lines])) {
    if (recall.kind === 'begun' && line.at < recall.lastAt) return null;
    recall = afterAnswer(recall, line);
  }
  return recall;
}

/** Brings the states of the learner up to date after these answers, which have been kept in this transaction. */
export async function updateRecalls(
  db: Transaction<Tables>,
  learner: string,
  fresh: readonly HistoryLine[],
): Promise<void> {
  const bySkill = groupsOf(fresh, ({ skill }) => skill);
  const before = await statesOf(db, learner, [...bySkill.keys()]);
  const after = new Map<string, Recall>();
  for (const [skill, lines] of bySkill) {
    const known = before.get(skill);
    const recall = continued(known === undefined ? newRecall() : known, lines);
    if (recall) {
      after.set(skill, recall);
      continue;
    }
    const rows = await db
      .selectFrom('answers')
      .select(HISTORY_COLUMNS)
      .where('learner', '=', learner)
      .where('skill', '=', skill)
      .orderBy('number')
      .execute();
    await others();
    after.set(skill, deriveAll(rows.map(historyLine)).get(skill)!);
  }
  await putRecalls(db, learner, after);
}

/** The states as they are kept, all of one moment; null where one can't be read. See `Store.standingOf`. */
export async function standingOf(db: Kysely<Tables>, learner: string): Promise<StandingOf | null> {
  const rows = await db
    .selectFrom('histories')
    .leftJoin('recalls', 'recalls.learner', 'histories.learner')
    .select(['history', 'answers', 'skill', 'recall_json'])
    .where('histories.learner', '=', learner)
    .orderBy('skill')
    .execute();
  const [first] = rows;
  const recalls = new Map<string, Recall>();
  for (const { skill, recall_json } of rows) {
    if (skill === null || recall_json === null) continue;
    const recall = recallIn({ recall_json });
    if (!recall) return null;
    recalls.set(skill, recall);
  }
  return { history: first?.history ?? null, last: first?.answers ?? 0, recalls };
}

/** Works out all states of a learner anew. */
export async function rebuildRecalls(db: Transaction<Tables>, learner: string): Promise<void> {
  const rows = await db
    .selectFrom('answers')
    .select(HISTORY_COLUMNS)
    .where('learner', '=', learner)
    .orderBy('number')
    .execute();
  await db.deleteFrom('recalls').where('learner', '=', learner).execute();
  await putRecalls(db, learner, deriveAll(rows.map(historyLine)));
}
