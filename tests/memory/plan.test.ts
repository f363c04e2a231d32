import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planWishes, type Recall } from '../../shared/memory.ts';
import { problem } from '../../shared/problem.ts';
import {
  expectedShare,
  FURTHEST_DAYS,
  NEW_A_DAY,
  type Plan,
  type PlanRequest,
  planTowards,
  replay,
  retrievability,
  TARGET,
} from '../../src/memory/index.ts';
import { LEAST_STABILITY } from '../../src/memory/model.ts';
import { told } from '../support/in-english.ts';
import { arbitraryHistory, arbitrarySkills, DAY, graphOf, reviewAs, START, skill } from './arbitraries.ts';

const chain = (length: number, width: number) =>
  graphOf(
    Array.from({ length }, (_, at) => (at < width ? skill(`s${at}`) : skill(`s${at}`, `s${at - width}`))),
  );

const request = (part: Partial<PlanRequest> & { days?: number; questions?: number }): PlanRequest => ({
  graph: chain(6, 2),
  recalls: new Map(),
  at: START,
  wishes: {
    assessmentAt: START + (part.days ?? 21) * DAY,
    minutesADay: part.questions ?? 8,
    secondsPerQuestion: 60,
  },
  ...part,
});
function planOf(of: PlanRequest): Plan {
  const plan = planTowards(of);
  if (!plan.ok)
    throw new Error(
      told(plan.problems)
        .map(({ message }) => message)
        .join('\n'),
    );
  return plan.value;
}
const questionsOn = (plan: Plan): number[] =>
  plan.days.map(({ practice }) => practice.reduce((sum, { questions }) => sum + questions, 0));
const daysOf = (plan: Plan, id: string): number[] =>
  plan.days.flatMap(({ practice }, day) => (practice.some(({ skill }) => skill === id) ? [day] : []));
const proven = (day: number): Recall =>
  reviewAs(reviewAs({ kind: 'new' }, 'firm', START + day * DAY, 'c1'), 'firm', START + day * DAY, 'c2');

describe('a plan towards an assessment', () => {
  it('has a day for every practice until half a day before it, and none after', () => {
    const plan = planOf(request({ days: 10 }));
    expect(plan.days.map(({ at }) => (at - START) / DAY)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    const sameDay = planOf(request({ days: 0.4 }));
    expect(sameDay.days).toEqual([]);
    expect(sameDay.prospects.every(({ kind }) => kind === 'not-begun')).toBe(true);
  });

  it('makes everything ready where there is time', () => {
    const plan = planOf(request({}));
    expect(plan.fits).toBe(true);
    const remembered = plan.prospects.reduce((sum, prospect) => sum + prospect.remembered, 0);
    expect(remembered / 6).toBeGreaterThan(0.97);
    expect(plan.average).toBeGreaterThan(0.92);
    expect(plan.prospects.map(({ kind }) => kind)).toEqual(Array(6).fill('ready'));
  });

  it('has the mean of the chances as its average, and 1 where there is nothing to plan for', () => {
    const plan = planOf(request({ graph: chain(12, 2), days: 5, questions: 4 }));
    const sum = plan.prospects.reduce((total, { chance }) => total + chance, 0);
    expect(sum).toBeLessThan(11);
    expect(plan.average).toBeCloseTo(sum / 12, 12);
    expect(planOf(request({ graph: graphOf([]) }))).toMatchObject({ average: 1, fits: true, prospects: [] });
  });

  it('is ready at the target and weak below it', () => {
    const of = request({ questions: 0, recalls: new Map([['s0', proven(-1)]]) });
    const { remembered } = planOf(of).prospects[0]!;
    expect(planOf({ ...of, target: remembered }).prospects[0]!.kind).toBe('ready');
    expect(planOf({ ...of, target: remembered + 1e-9 }).prospects[0]!.kind).toBe('weak');
  });

  it('doesn’t ask today what was proven today', () => {
    const plan = planOf(request({ graph: chain(1, 1), recalls: new Map([['s0', proven(0)]]) }));
    expect(plan.days[0]!.practice).toEqual([]);
    expect(daysOf(plan, 's0').length).toBeGreaterThan(0);
  });

  it('goes on with what was begun, however many new ones are allowed and whatever is forgotten under it', () => {
    const graph = graphOf([skill('under'), skill('begun', 'under')]);
    const once = reviewAs({ kind: 'new' }, 'firm', START - DAY, 'c1');
    const plan = planOf(request({ graph, recalls: new Map([['begun', once]]), newADay: 0 }));
    expect(plan.days[0]!.practice).toEqual([{ skill: 'begun', questions: 1 }]);
    expect(plan.prospects.map(({ kind }) => kind)).toEqual(['not-begun', 'ready']);
  });

  it('says which skills will not be ready where there is none', () => {
    const plan = planOf(request({ graph: chain(12, 2), days: 5, questions: 4 }));
    expect(plan.fits).toBe(false);
    expect(plan.prospects.find(({ skill }) => skill === 's11')).toEqual({
      kind: 'not-begun',
      skill: 's11',
      remembered: 0,
      chance: 0,
    });
    for (const { kind, remembered } of plan.prospects) expect(kind === 'ready').toBe(remembered >= TARGET);
  });

  it('plans nothing with no minutes, and says what is then left on the day', () => {
    const held = proven(-1);
    const plan = planOf(request({ questions: 0, recalls: new Map([['s0', held]]) }));
    expect(questionsOn(plan)).toEqual(Array(21).fill(0));
    const remembered = retrievability(held, START + 21 * DAY);
    const chance = expectedShare(held, START + 21 * DAY);
    expect(plan.prospects[0]).toEqual({ kind: 'weak', skill: 's0', remembered, chance });
    expect(chance).toBeLessThan(remembered);
  });

  it('spaces the reviews of a skill: early ones while it is fresh, the last near the day', () => {
    const plan = planOf(request({ graph: chain(1, 1), days: 28 }));
    const days = daysOf(plan, 's0');
    expect(days[0]).toBe(0);
    expect(days.length).toBeGreaterThan(2);
    expect(days.at(-1)).toBe(27);
    expect(Math.max(...days.slice(1).map((day, at) => day - days[at]!))).toBeGreaterThan(7);
  });

  it('plans what is assessed and what that stands on, and nothing else', () => {
    const plan = planOf(request({ skills: ['s4'] }));
    expect(plan.prospects.map(({ skill }) => skill)).toEqual(['s0', 's2', 's4']);
  });

  it('begins no more new skills today than are left for today', () => {
    const recalls = new Map([
      ['s0', proven(0)],
      ['s1', proven(0)],
    ]);
    const plan = planOf(request({ recalls, questions: 60 }));
    const [today] = plan.days;
    expect(today!.practice.map(({ skill }) => skill).filter((id) => !recalls.has(id))).toEqual(['s2']);
  });

  it('shows first what was begun and is not shown', () => {
    const recalls = new Map([['s0', reviewAs({ kind: 'new' }, 'lost', START - DAY, 'c1')]]);
    expect(planOf(request({ recalls })).days[0]!.practice[0]).toEqual({ skill: 's0', questions: 3 });
  });

  it('refreshes over several days what a new skill stands on, where a day is too short for all of it', () => {
    const under = ['a', 'b', 'c'];
    const graph = graphOf([...under.map((id) => skill(id)), skill('next', ...under), skill('top', 'next')]);
    const recalls = new Map(under.map((id) => [id, proven(-20)]));
    const plan = planOf(request({ graph, recalls, questions: 4 }));
    expect(plan.days[0]!.practice.map(({ skill }) => skill)).toEqual(under);
    expect(daysOf(plan, 'next')[0]).toBe(1);
    expect(daysOf(plan, 'top')[0]).toBe(1);
    expect(plan.fits).toBe(true);
  });

  it('never begins a skill while something under it is not proven, for want of questions', () => {
    const under = ['a', 'b', 'c'];
    const graph = graphOf([...under.map((id) => skill(id)), skill('next', ...under), skill('top', 'next')]);
    const recalls = new Map(under.map((id) => [id, proven(-20)]));
    const plan = planOf(request({ graph, recalls, questions: 4, days: 0.9 }));
    expect(plan.prospects.map(({ kind }) => kind)).toEqual([
      'ready',
      'ready',
      'ready',
      'not-begun',
      'not-begun',
    ]);
    expect(plan.days).toHaveLength(1);
  });

  it('asks less of somebody who holds everything than of a beginner', () => {
    const recalls = new Map(chain(6, 2).skills.map(({ id }) => [id, proven(-1)] as const));
    const total = (plan: Plan): number => questionsOn(plan).reduce((sum, count) => sum + count, 0);
    expect(total(planOf(request({ recalls })))).toBeLessThan(total(planOf(request({}))));
  });

  it.each([
    ['assessment-past', { days: 0 }],
    ['assessment-past', { days: -3 }],
    ['assessment-far', { days: FURTHEST_DAYS + 1 }],
    ['unknown-skill', { skills: ['s0', 'nowhere'] }],
  ])('is refused with %s', (code, part) => {
    const plan = planTowards(request(part));
    expect(plan.ok ? [] : told(plan.problems).map((found) => problem.parse(found).code)).toEqual([code]);
  });
});

const arbitraryPlanning = fc
  .record({
    skills: arbitrarySkills,
    history: arbitraryHistory,
    hours: fc.integer({ min: 1, max: 40 * 24 }),
    minutesADay: fc.integer({ min: 0, max: 20 }),
    secondsPerQuestion: fc.integer({ min: 20, max: 120 }),
    newADay: fc.integer({ min: 0, max: 4 }),
  })
  .map(({ skills, history, hours, minutesADay, secondsPerQuestion, newADay }): PlanRequest => {
    const at = (history.at(-1)?.at ?? START) + DAY;
    const ids = skills.map(({ id }) => id);
    // Half of the skills at most have a history.
    const recalls = replay(
      history.map((answer, index) => ({ ...answer, skill: ids[(index % ids.length) >> 1]! })),
    );
    const wishes = { assessmentAt: at + hours * 3_600_000, minutesADay, secondsPerQuestion };
    return { graph: graphOf(skills), recalls, at, wishes, newADay };
  });

describe('any plan', () => {
  it('keeps to the minutes and to the new skills of a day, and begins nothing before what it stands on', () => {
    fc.assert(
      fc.property(arbitraryPlanning, (of) => {
        expect(planWishes.parse(of.wishes)).toEqual(of.wishes);
        const plan = planOf(of);
        const begun = new Set(of.recalls.keys());
        for (const { practice } of plan.days) {
          const seconds =
            practice.reduce((sum, { questions }) => sum + questions, 0) * of.wishes.secondsPerQuestion;
          expect(seconds).toBeLessThanOrEqual(of.wishes.minutesADay * 60);
          const first = practice.filter(({ skill }) => !begun.has(skill));
          expect(first.length).toBeLessThanOrEqual(of.newADay ?? NEW_A_DAY);
          // In the order of the day each is begun after everything it stands on.
          for (const { skill } of practice) {
            for (const need of begun.has(skill) ? [] : of.graph.byId.get(skill)!.needs)
              expect(begun.has(need)).toBe(true);
            begun.add(skill);
          }
        }
        for (const { kind, skill } of plan.prospects) if (!begun.has(skill)) expect(kind).toBe('not-begun');
      }),
      { numRuns: 60 },
    );
  });

  it('leaves nobody with less than doing nothing would', () => {
    fc.assert(
      fc.property(arbitraryPlanning, (of) => {
        const plan = planOf(of);
        const idle = planOf({ ...of, wishes: { ...of.wishes, minutesADay: 0 } });
        expect(plan.average).toBeGreaterThanOrEqual(idle.average - 1e-9);
        expect(plan.average).toBeLessThanOrEqual(1);
      }),
      { numRuns: 40 },
    );
  });

  it('reckons with a skill that is forgotten as fast as the model knows', () => {
    const least: Recall = { ...proven(-1), stability: LEAST_STABILITY, lapses: 5 } as Recall;
    const plan = planOf(
      request({ graph: graphOf([skill('s0')]), recalls: new Map([['s0', least]]), questions: 1 }),
    );
    expect(plan.prospects.map(({ kind }) => kind)).not.toContain('not-begun');
    for (const { chance } of plan.prospects) expect(chance).toBeGreaterThan(0);
  });

  it('is the same for the same request', () => {
    fc.assert(
      fc.property(arbitraryPlanning, (of) => {
        expect(planOf(structuredClone(of))).toEqual(planOf(of));
      }),
      { numRuns: 15 },
    );
  });
});
