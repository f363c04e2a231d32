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

const line = (cells: readonly Cell[]): string => writeCsv([cells], { forSpreadsheets: true });

/** The line that names the columns. */
export const marksHead = ({ places }: HomeworkSet): string =>
  line([
    'set',
    'learner',
    'name',
    'attempt',
    'earned',
    'out of',
    'percent',
    'answered',
    ...places.map(({ skill }, index) => `${index + 1} ${skill}`),
    'changed by tutor',
  ]);

/** One learner's line. An item whose mark a tutor has changed is named in the last column. */
export function marksLine({ id, places }: HomeworkSet, { learner, name, mark }: MarksRow): string {
  // Of who handed in nothing: attempt, earned, out of, percent, answered, each place, what was changed.
  if (!mark) return line([id, learner, name, ...Array(places.length + 6).fill(null)]);
  const { earned, outOf, share, answered } = totalOf(mark);
  const changed = mark.items.flatMap(({ overrides }, index) => (overrides.length > 0 ? [index + 1] : []));
  return line([
    id,
    learner,
    name,
    mark.attempt,
    earned,
    outOf,
    Math.round(share * 1000) / 10,
    answered,
    ...mark.items.map(earnedOf),
    changed.join(' '),
  ]);
}

/** The whole table. */
export const marksCsv = (set: HomeworkSet, rows: readonly MarksRow[]): string =>
  marksHead(set) + rows.map((row) => marksLine(set, row)).join('');
