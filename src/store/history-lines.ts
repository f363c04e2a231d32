/** Answers in short, read from the columns beside their records: a history without its circuits and explanations. */
import type { Kysely } from 'kysely';
import { type Attempt, attempt, type SkillAnswer } from '../../shared/memory.ts';
import type { Tables } from './schema.ts';
import type { LinePage } from './types.ts';

/** What the memory needs of an answer, as it counts. */
export interface HistoryLine extends SkillAnswer {
  readonly number: number;
}

type HistoryRow = Pick<
  Tables['answers'],
  'id' | 'number' | 'skill' | 'circuit' | 'counts_at' | 'share' | 'attempt_json'
>;
export const HISTORY_COLUMNS = [
  'id',
  'number',
  'skill',
  'circuit',
  'counts_at',
  'share',
  'attempt_json',
] as const;

/** The attempt in a row; null where it can't be read any more. */
export function attemptIn(text: string): Attempt | null {
  try {
    return attempt.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Of an answer whose attempt can't be read its share counts, without help and as if nobody had measured the time: one text keeps no history back. */
const attemptOf = ({ attempt_json, share }: HistoryRow): Attempt =>
  attemptIn(attempt_json) ?? {
    share,
    help: { hint: false, explanation: false },
    secondsUsed: null,
    secondsExpected: 60,
  };

export function historyLine(row: HistoryRow): HistoryLine {
  const { id, number, skill, circuit, counts_at } = row;
  return { id, number, skill, circuit, at: counts_at, attempt: attemptOf(row) };
}

/** See `Store.linesAfter`. */
export async function linesAfter(
  db: Kysely<Tables>,
  learner: string,
  after: number,
  limit: number,
): Promise<LinePage> {
  const rows = await db
    .selectFrom('answers')
    .select([...HISTORY_COLUMNS, 'correct', 'idea'])
    .where('learner', '=', learner)
    .where('number', '>', after)
    .orderBy('number')
    .limit(limit)
    .execute();
  // Read after the rows, so that the last number is never below one of theirs.
  const history = await db
    .selectFrom('histories')
    .select(['history', 'answers', 'corrections'])
    .where('learner', '=', learner)
    .executeTakeFirst();
  return {
    history: history?.history ?? null,
    last: history?.answers ?? 0,
    corrections: history?.corrections ?? 0,
    lines: rows.map(({ correct, idea, ...row }) => ({
      ...historyLine(row),
      correct: correct === 1,
      idea,
    })),
  };
}
