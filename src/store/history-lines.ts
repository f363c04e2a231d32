/** Answers in short, read from the columns beside their records: a history without its circuits and explanations. */
import type { Kysely } from 'kysely';
import { attempt, type SkillAnswer } from '../../shared/memory.ts';
import type { AnswerLine } from '../../shared/practice.ts';
import { wrongIdea } from '../../shared/question.ts';
import type { Tables } from './schema.ts';
import type { LinePage } from './types.ts';

/** What the memory needs of an answer, as it counts. */
export interface HistoryLine extends SkillAnswer {
  readonly number: number;
}

type HistoryRow = Pick<
  Tables['answers'],
  'id' | 'number' | 'skill' | 'circuit' | 'counts_at' | 'attempt_json'
>;
export const HISTORY_COLUMNS = ['id', 'number', 'skill', 'circuit', 'counts_at', 'attempt_json'] as const;

export const historyLine = ({ attempt_json, counts_at, ...row }: HistoryRow): HistoryLine => ({
  ...row,
  at: counts_at,
  attempt: attempt.parse(JSON.parse(attempt_json)),
});

function ideaIn(text: string | null): AnswerLine['idea'] {
  if (text === null) return null;
  try {
    return wrongIdea.parse(JSON.parse(text));
  } catch {
    return null;
  }
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
    .select([...HISTORY_COLUMNS, 'correct', 'idea_json'])
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
    lines: rows.map(({ correct, idea_json, ...row }) => ({
      ...historyLine(row),
      correct: correct === 1,
      idea: ideaIn(idea_json),
    })),
  };
}
