import { describe, expect, it } from 'vitest';
import { marksCsv, readCsv } from '../../src/homework/index.ts';
import { rightly, work } from './class-work.ts';
import { places, setOf } from './course.ts';

function cells(text: string): readonly (readonly string[])[] {
  const read = readCsv(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { columns, rows } = read.value;
  return [columns, ...rows.map((row) => columns.map(row.value))];
}

describe('marks as CSV', () => {
  const set = setOf(places(['make-contact'], 3));
  const { marks } = work(set, [
    rightly,
    (question, item) => (item < 1 ? rightly(question, item) : undefined),
  ]);
  const changed = {
    ...marks[1]!,
    items: marks[1]!.items.with(2, {
      ...marks[1]!.items[2]!,
      overrides: [{ earned: 1, reason: 'Shown at the panel.', by: 'tutor', at: 0 }],
    }),
  };

  it('has a line for everybody, who handed in nothing too, and says what a tutor changed', () => {
    const table = cells(
      marksCsv(set, [
        { learner: 'learner-1', name: 'Ada, "the quick"', mark: marks[0]! },
        { learner: 'learner-2', name: '=Ben', mark: changed },
        { learner: 'learner-3', name: 'Cem', mark: null },
      ]),
    );
    expect(table[0]!.slice(0, 9)).toEqual([
      'set',
      'learner',
      'name',
      'attempt',
      'earned',
      'out of',
      'percent',
      'answered',
      '1 make-contact',
    ]);
    expect(table[1]).toEqual([
      'week-40',
      'learner-1',
      'Ada, "the quick"',
      '1',
      '6',
      '6',
      '100',
      '3',
      '2',
      '2',
      '2',
      '',
    ]);
    expect(table[2]!.slice(2)).toEqual(["'=Ben", '1', '3', '6', '50', '1', '2', '0', '1', '3']);
    expect(table[3]!.slice(3).every((value) => value === '')).toBe(true);
  });
});
