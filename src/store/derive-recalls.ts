/**
 * Recall states as they follow from the answers: all of a skill's answers in the order in which they were given, those
 * of the same moment in the order in which they arrived. An answer dated after now (a clock that ran ahead) counts as
 * given now; the state is tentative then and the skill's next answer works it out anew.
 */
import type { Transaction } from 'kysely';
import { attempt, type Recall, recall as recallSchema, type SkillAnswer } from '../../shared/memory.ts';
import { afterAnswer, mergeHistories, newRecall, replay } from '../memory/index.ts';
import { chunksOf, groupsOf } from './chunks.ts';
import { others } from './others.ts';
import type { RecallsTable, Tables } from './schema.ts';

/** What the memory needs of an answer. */
export interface HistoryLine extends SkillAnswer {
  readonly number: number;
}

export interface Derived {
  readonly recall: Recall;
  readonly tentative: boolean;
}

type HistoryRow = Pick<Tables['answers'], 'id' | 'number' | 'skill' | 'circuit' | 'at' | 'attempt_json'>;
export const HISTORY_COLUMNS = ['id', 'number', 'skill', 'circuit', 'at', 'attempt_json'] as const;

export const historyLine = ({ attempt_json, ...row }: HistoryRow): HistoryLine => ({
  ...row,
  attempt: attempt.parse(JSON.parse(attempt_json)),
});

/** The states that whole histories lead to, by skill. Lines are in order of arrival. */
export function deriveAll(lines: readonly HistoryLine[], now: number): ReadonlyMap<string, Derived> {
  const early = new Set(lines.filter(({ at }) => at > now).map(({ skill }) => skill));
  const dated = lines.map((line) => (line.at > now ? { ...line, at: now } : line));
  const states = replay(mergeHistories([dated]));
  return new Map([...states].map(([skill, recall]) => [skill, { recall, tentative: early.has(skill) }]));
}

/** The state in a row; null where it can't be read any more and has to be derived. */
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
  states: Iterable<readonly [skill: string, Derived]>,
): Promise<void> {
  const rows = [...states].map(([skill, { recall, tentative }]) => ({
    learner,
    skill,
    recall_json: JSON.stringify(recall),
    tentative: tentative ? 1 : 0,
  }));
  for (const values of chunksOf(rows, 100)) {
    await db
      .insertInto('recalls')
      .values(values)
      .onConflict((conflict) =>
        conflict.columns(['learner', 'skill']).doUpdateSet(({ ref }) => ({
          recall_json: ref('excluded.recall_json'),
          tentative: ref('excluded.tentative'),
        })),
      )
      .execute();
  }
}

async function statesOf(
  db: Transaction<Tables>,
  learner: string,
  skills: readonly string[],
): Promise<ReadonlyMap<string, Derived>> {
  const states = new Map<string, Derived>();
  for (const some of chunksOf(skills, 200)) {
    const rows = await db
      .selectFrom('recalls')
      .select(['skill', 'recall_json', 'tentative'])
      .where('learner', '=', learner)
      .where('skill', 'in', some)
      .execute();
    for (const row of rows)
      states.set(row.skill, {
        recall: recallIn(row) ?? newRecall(),
        tentative: row.tentative === 1 || !recallIn(row),
      });
  }
  return states;
}

/** The state after these answers where nothing but they has to be looked at; null where the whole history has to be. */
function continued(before: Derived | undefined, lines: readonly HistoryLine[], now: number): Recall | null {
  if (before?.tentative) return null;
  let recall = before?.recall ?? newRecall();
  for (const line of lines.toSorted((one, other) => one.at - other.at || one.number - other.number)) {
    if (line.at > now || (recall.kind === 'begun' && line.at < recall.lastAt)) return null;
    recall = afterAnswer(recall, line);
  }
  return recall;
}

/** Brings the states of the learner up to date after these answers, which have been kept in this transaction. */
export async function updateRecalls(
  db: Transaction<Tables>,
  learner: string,
  fresh: readonly HistoryLine[],
  now: number,
): Promise<void> {
  const bySkill = groupsOf(fresh, ({ skill }) => skill);
  const before = await statesOf(db, learner, [...bySkill.keys()]);
  const after = new Map<string, Derived>();
  for (const [skill, lines] of bySkill) {
    const recall = continued(before.get(skill), lines, now);
    if (recall) {
      after.set(skill, { recall, tentative: false });
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
    after.set(skill, deriveAll(rows.map(historyLine), now).get(skill)!);
  }
  await putRecalls(db, learner, after);
}

/** Works out all states of a learner anew. */
export async function rebuildRecalls(db: Transaction<Tables>, learner: string, now: number): Promise<void> {
  const rows = await db
    .selectFrom('answers')
    .select(HISTORY_COLUMNS)
    .where('learner', '=', learner)
    .orderBy('number')
    .execute();
  await db.deleteFrom('recalls').where('learner', '=', learner).execute();
  await putRecalls(db, learner, deriveAll(rows.map(historyLine), now));
}
