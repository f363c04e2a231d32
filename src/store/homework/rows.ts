/** Rows of the homework tables as what they hold. */
import type { Selectable } from 'kysely';
import { homeworkSet, override, paper, paperMark } from '../../../shared/homework.ts';
import { homeworkWish } from '../../../shared/homework-views.ts';
import { answer } from '../../../shared/question.ts';
import type { ShortMark } from '../../homework/index.ts';
import { withMarkOfToday } from '../../practice/older-marks.ts';
import type { PapersTable, SavedAnswersTable, SetsTable } from './tables.ts';
import type { KeptAnswer, KeptPaper, KeptSet, PaperHead } from './types.ts';

export const HEAD_COLUMNS = [
  'id',
  'code',
  'set',
  'learner',
  'attempt',
  'made_at',
  'begun_at',
  'submitted_at',
  'saves',
  'marked_at',
  'remembered_at',
  'short_json',
] as const;

export const setIn = (text: string) => homeworkSet.parse(JSON.parse(text));
export const paperIn = (text: string) => paper.parse(JSON.parse(text));
/** Papers that an earlier version marked have its marks. */
export function markIn(text: string) {
  const { items, ...whole } = JSON.parse(text) as { items: unknown[] };
  return paperMark.parse({ ...whole, items: items.map(withMarkOfToday) });
}
export const overrideIn = (text: string) => override.parse(JSON.parse(text));
/** Follows from the mark and is read by the thousand, so it is taken as it was written. */
export const shortIn = (text: string): ShortMark => JSON.parse(text) as ShortMark;

export const keptSet = (row: Selectable<SetsTable>): KeptSet => ({
  set: setIn(row.set_json),
  wish: homeworkWish.parse(JSON.parse(row.wish_json)),
  class: row.class,
  madeBy: row.made_by,
  madeAt: row.made_at,
  issuedAt: row.issued_at,
  withdrawnAt: row.withdrawn_at,
});

export const paperHead = (row: Pick<Selectable<PapersTable>, (typeof HEAD_COLUMNS)[number]>): PaperHead => ({
  id: row.id,
  code: row.code,
  set: row.set,
  learner: row.learner,
  attempt: row.attempt,
  madeAt: row.made_at,
  begunAt: row.begun_at,
  submittedAt: row.submitted_at,
  saves: row.saves,
  markedAt: row.marked_at,
  rememberedAt: row.remembered_at,
  short: row.short_json === null ? null : shortIn(row.short_json),
});

export const keptPaper = (
  row: Pick<Selectable<PapersTable>, (typeof HEAD_COLUMNS)[number] | 'paper_json'>,
): KeptPaper => ({ ...paperHead(row), paper: paperIn(row.paper_json) });

/** `hint` is told by the hints that were asked for. */
export const keptAnswer = (row: Selectable<SavedAnswersTable>, hints: ReadonlySet<number>): KeptAnswer => ({
  id: row.id,
  number: row.number,
  item: row.item,
  answer: answer.parse(JSON.parse(row.answer_json)),
  at: row.at,
  secondsUsed: row.seconds,
  hint: hints.has(row.item),
});
