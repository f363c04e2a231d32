import { describe, expect, it } from 'vitest';
import type { Recall } from '../../shared/memory.ts';
import {
  ABLE,
  expectedShare,
  newRecall,
  planTowards,
  type Recalls,
  retrievability,
  review,
  TARGET,
} from '../../src/memory/index.ts';
import { DAY, graphOf, START, skill } from './arbitraries.ts';

/** So many answers of three states, one a day until today: what each earned of the marks. */
function answered(shares: readonly number[], begun = START - shares.length * DAY): Recall {
  return shares.reduce<Recall>(
    (recall, share, number) =>
      review(recall, {
        grade: share === 1 ? 'firm' : share > 0.3 ? 'shaky' : 'lost',
        at: begun + number * DAY,
        circuit: `c${number}`,
        share,
        ratio: share === 1 ? 5 : share > 0.3 ? 0.17 : 0.02,
      }),
    newRecall(),
  );
}
/** So many wrong answers and a right one each time so many have passed. */
const rightTwiceInTwelve = [0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0];
const never = [0, 0, 0, 0, 0, 0, 0, 0];

const graph = graphOf([skill('weak'), skill('hopeless'), skill('strong'), skill('ahead', 'strong')]);
const planOf = (recalls: Recalls) => {
  const wishes = { assessmentAt: START + 14 * DAY, minutesADay: 30, secondsPerQuestion: 60 };
  const plan = planTowards({ graph, recalls, at: START, wishes });
  if (!plan.ok) throw new Error('refused');
  const of = new Map(plan.value.prospects.map((prospect) => [prospect.skill, prospect]));
  return { ...plan.value, of: (id: string) => of.get(id)! };
};

describe('what is to be expected on the day', () => {
  const failing = new Map([
    ['weak', answered(rightTwiceInTwelve)],
    ['hopeless', answered(never)],
  ]);

  it('takes in what went wrong: after 2 of 12 and 0 of 8 right it is no 98 %', () => {
    const plan = planOf(failing);
    expect(plan.of('weak').kind).toBe('weak');
    expect(plan.of('hopeless').kind).toBe('weak');
    // By the model of forgetting alone both would be ready.
    expect(plan.of('weak').remembered).toBeGreaterThan(TARGET);
    expect(plan.of('hopeless').remembered).toBeGreaterThan(TARGET);
    expect(plan.of('weak').chance).toBeLessThan(0.4);
    expect(plan.of('hopeless').chance).toBeLessThan(0.3);
    expect(plan.of('hopeless').chance).toBeLessThan(plan.of('weak').chance);
    expect(plan.average).toBeLessThan(0.5);
    expect(plan.fits).toBe(false);
  });

  it('expects of what wasn’t begun what came of everything else', () => {
    expect(planOf(failing).of('strong').chance).toBeLessThan(0.5);
    expect(planOf(new Map()).of('strong').chance).toBeGreaterThan(0.9);
    const going = planOf(new Map([['weak', answered([1, 1, 1, 1, 1, 1])]]));
    expect(going.of('strong').chance).toBeGreaterThan(0.9);
  });

  it('is ready for what goes well, and says less of what goes less well', () => {
    const recalls = new Map([
      ['weak', answered([0, 1, 1 / 3, 1, 0, 1])],
      ['hopeless', answered(never)],
      ['strong', answered([1, 1, 1, 1, 1, 1])],
    ]);
    const plan = planOf(recalls);
    const [weak, hopeless, strong] = ['weak', 'hopeless', 'strong'].map((id) => plan.of(id).chance);
    expect(plan.of('strong').kind).toBe('ready');
    expect(strong).toBeGreaterThan(0.93);
    expect(weak).toBeLessThan(ABLE);
    expect(weak).toBeGreaterThan(hopeless! + 0.2);
  });

  it('is no worse for a slip now and then, and comes back with a few right answers', () => {
    const slips = answered([1, 1, 1 / 3, 1, 1, 1, 1, 1 / 3, 1, 1]);
    expect(planOf(new Map([['strong', slips]])).of('strong').kind).toBe('ready');
    const learnt = answered([...never, 1, 1, 1, 1, 1, 1, 1]);
    expect(planOf(new Map([['strong', learnt]])).of('strong').kind).toBe('ready');
  });

  it('practises what is weak no less than what is strong', () => {
    const both = new Map([
      ['weak', answered([0, 0, 0, 1, 0, 0])],
      ['strong', answered([1, 1, 1, 1, 1, 1])],
    ]);
    const questions = (id: string): number =>
      planOf(both)
        .days.flatMap(({ practice }) => practice)
        .filter((each) => each.skill === id)
        .reduce((sum, each) => sum + each.questions, 0);
    expect(questions('weak')).toBeGreaterThan(questions('strong'));
  });
});

describe('the share of the marks to be expected now', () => {
  it('is what is remembered of what was earned: half of it by who earns half', () => {
    const half = answered(Array.from({ length: 40 }, () => 0.5));
    const soon = START - DAY;
    expect(retrievability(half, soon)).toBe(1);
    // (0.5 · 1/(1 - 0.85) + 2 · 0.95) / (1/(1 - 0.85) + 2)
    expect(expectedShare(half, soon)).toBeCloseTo((0.5 / 0.15 + 1.9) / (1 / 0.15 + 2), 2);
    expect(expectedShare(half, soon + 90 * DAY)).toBeLessThan(expectedShare(half, soon));
    expect(expectedShare(newRecall(), soon)).toBe(0);
  });
});
