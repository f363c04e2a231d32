/** A small course and sets of it, put together by hand so that changes to the banks don't move these tests. */
import type { Bank, Recipe } from '../../shared/bank.ts';
import type { HomeworkPlace, HomeworkSet, Seat } from '../../shared/homework.ts';
import { placesFor } from '../../src/homework/index.ts';
import { type Course, courseOf } from '../../src/practice/index.ts';

const recipe = (families: string[], kinds: Recipe['kinds'], size: [number, number]): Recipe => ({
  families,
  kinds,
  size,
  share: 1,
});

const skills = [
  {
    id: 'make-contact',
    title: 'Follow a make contact',
    needs: [],
    recipes: [recipe(['make-only'], ['lamp-states', 'sequence'], [2, 6])],
  },
  {
    id: 'status-lamps',
    title: 'Read a status pair',
    needs: ['make-contact'],
    recipes: [
      recipe(['status-pair'], ['lamp-states', 'relay-states'], [4, 6]),
      recipe(['status-pair', 'make-only'], ['wiring'], [2, 4]),
    ],
  },
  {
    id: 'relay-chains',
    title: 'Follow one relay that feeds another',
    needs: ['status-lamps'],
    recipes: [recipe(['relay-chain'], ['lamp-states', 'sequence'], [2, 5])],
  },
  {
    id: 'controller-inputs',
    title: 'Read controller inputs',
    needs: ['status-lamps'],
    recipes: [recipe(['two-supplies'], ['input-states', 'meter', 'still-live'], [2, 4])],
  },
  {
    id: 'seal-in',
    title: 'Follow a relay that holds itself',
    needs: ['status-lamps'],
    recipes: [recipe(['seal-in'], ['lamp-states', 'sequence'], [1, 7])],
  },
];

const bank: Bank = {
  topics: [
    {
      id: 'nursery-panels',
      language: 'en',
      title: 'Nursery panels',
      summary: 'What the panels of a nursery teach.',
      order: 10,
      skills,
      lesson: [],
      circuits: [],
      questions: [],
    },
  ],
};

export const course: Course = (() => {
  const made = courseOf(bank);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
})();

export const HOUR = 3_600_000;
export const OPENS = 1_760_000_000_000;
export const CLOSES = OPENS + 72 * HOUR;

export function places(only: readonly string[], items: number): readonly HomeworkPlace[] {
  const made = placesFor(course, { skills: only, items, level: 'small', marksEach: 2, seed: 'sample' });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

export const setOf = (chosen: readonly HomeworkPlace[], changes: Partial<HomeworkSet> = {}): HomeworkSet => ({
  id: 'week-40',
  title: 'Week 40: status lamps',
  places: [...chosen],
  opensAt: OPENS,
  closesAt: CLOSES,
  attempts: 2,
  counts: 'best',
  help: 'none',
  review: 'after-closing',
  ...changes,
});

/** Seeds as long as the keyed hashes that they stand for. */
export const seats = (count: number, attempt = 1): Seat[] =>
  Array.from({ length: count }, (_, number) => ({
    learner: `learner-${number + 1}`,
    attempt,
    seed: `${(number + 1).toString(16).padStart(60, '5a')}${attempt}`,
  }));
