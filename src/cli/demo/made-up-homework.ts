/** Homework of the made-up group: sets as a tutor issues them, and papers worked on as learners do, one late, some not at all. */
import type { HomeworkWish } from '../../../shared/homework-views.ts';
import type { Random } from '../../generator/index.ts';
import type { Desk } from '../../server/homework/desk.ts';
import { askHint, beginPaper, saveAnswers, submitPaper } from '../../server/homework/learner.ts';
import { madeUpAnswer } from './made-up-answers.ts';
import type { MadeUpWords } from './made-up-people.ts';
import type { Practising } from './made-up-practice.ts';

const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;

/** A set, with the days after the beginning on which it opens and closes. */
interface MadeUpSet {
  readonly id: keyof MadeUpWords['sets'];
  readonly skills: readonly string[];
  readonly items: number;
  readonly opens: number;
  readonly closes: number;
  readonly attempts: number;
}

export const SETS: readonly MadeUpSet[] = [
  {
    id: 'contacts',
    skills: ['make-contact', 'break-contact', 'make-or-break'],
    items: 9,
    opens: 1,
    closes: 7,
    attempts: 1,
  },
  {
    id: 'changeover',
    skills: ['changeover-legs', 'changeover-sequence', 'chain-of-two', 'poles-on-two-supplies'],
    items: 12,
    opens: 8,
    closes: 14,
    attempts: 1,
  },
  {
    id: 'sealIn',
    skills: ['seal-in-holds', 'poles-on-two-supplies', 'chain-of-two', 'healthy-relay-states'],
    items: 12,
    opens: 16,
    closes: 24,
    attempts: 2,
  },
];

export const wishOf = (set: MadeUpSet, words: MadeUpWords, dayOf: (day: number) => number): HomeworkWish => ({
  title: words.sets[set.id],
  topics: [],
  skills: [...set.skills],
  items: set.items,
  level: 'small',
  marksEach: 2,
  opensAt: dayOf(set.opens) + 8 * HOUR,
  closesAt: dayOf(set.closes) + 20 * HOUR,
  attempts: set.attempts,
  counts: 'best',
  help: 'hints',
  supervised: false,
  review: 'after-submitting',
});

/** One learner's work on a paper, from `startAt` on; `clock` is the clock of the store. */
export async function workOnPaper(
  desk: Desk,
  practising: Practising,
  set: string,
  startAt: number,
  clock: { at: number },
): Promise<void> {
  const { id, learner, random, practised } = practising;
  const own: Random = random.child(`paper/${set}`);
  const asking = { id, role: 'learner', session: null } as const;
  clock.at = startAt;
  const { id: paperId } = await beginPaper(desk, asking, set);
  const kept = await desk.store.homework.paper(paperId);
  if (!kept) throw new RangeError('the paper that was begun is not there');
  for (const [item, { question, skill, secondsExpected }] of kept.paper.items.entries()) {
    if (own.chance(0.04 + 0.2 * (1 - learner.talent) ** 2)) continue;
    const before = practised.get(skill) ?? 0;
    if (own.chance(0.06)) await askHint(desk, asking, paperId, item);
    const answer = madeUpAnswer(learner, question, before, own);
    const secondsUsed = Math.round(secondsExpected * (0.7 + own.int(0, 90) / 100));
    clock.at += secondsUsed * 1000;
    await saveAnswers(desk, asking, paperId, {
      answers: [{ id: `demo-${id}-${paperId}-${item}`.slice(0, 64), item, answer, secondsUsed }],
    });
    practised.set(skill, before + 1);
  }
  // Now and then somebody forgets to hand in: what was saved counts at closing time.
  if (own.chance(0.93)) await submitPaper(desk, asking, paperId);
}
