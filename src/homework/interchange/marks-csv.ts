/** Marks as a table that a spreadsheet opens: one line for each learner, one column for each place. */
import type { HomeworkSet, PaperMark } from '../../../shared/homework.ts';
import { earnedOf, totalOf } from '../marking/totals.ts';
import { type Cell, writeCsv } from './csv.ts';

export interface MarksRow {
  readonly learner: string;
  /** As the class knows them. */
  readonly name: string;
  /** The attempt that counts; null: nothing handed in. */
  readonly mark: PaperMark | null;
}

/** An item whose mark a tutor has changed is named in the last column. */
export function marksCsv(set: HomeworkSet, rows: readonly MarksRow[]): string {
  const head = [
    'set',
    'learner',
    'name',
    'attempt',
    'earned',
    'out of',
    'percent',
    'answered',
    ...set.places.map(({ skill }, index) => `${index + 1} ${skill}`),
    'changed by tutor',
  ];
  const body = rows.map(({ learner, name, mark }): readonly Cell[] => {
    if (!mark) return [set.id, learner, name, ...head.slice(3).map(() => null)];
    const { earned, outOf, share, answered } = totalOf(mark);
    const changed = mark.items.flatMap(({ overrides }, index) => (overrides.length > 0 ? [index + 1] : []));
    return [
      set.id,
      learner,
      name,
      mark.attempt,
      earned,
      outOf,
      Math.round(share * 1000) / 10,
      answered,
      ...mark.items.map(earnedOf),
      changed.join(' '),
    ];
  });
  return writeCsv([head, ...body], { forSpreadsheets: true });
}
