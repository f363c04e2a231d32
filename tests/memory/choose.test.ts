import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grade, Recall } from '../../shared/memory.ts';
import {
  ASKED_AT_MOST,
  type ChoiceRequest,
  choose,
  forecast,
  isDue,
  NEW_A_DAY,
  newRecall,
  openSkills,
  recallOf,
  replay,
  retrievability,
  type SkillGraph,
} from '../../src/memory/index.ts';
import { begunOnDayOf } from '../../src/memory/pace.ts';
import { turnOf } from '../../src/memory/turn.ts';
import { arbitraryHistory, arbitrarySkills, DAY, graphOf, reviewAs, START, skill } from './arbitraries.ts';

const graph = graphOf([skill('a'), skill('b'), skill('c'), skill('d', 'a'), skill('e', 'd', 'b')]);

const reviewed = (...reviews: readonly (readonly [Grade, number])[]): Recall =>
  reviews.reduce<Recall>(
    (recall, [grade, day], index) => reviewAs(recall, grade, START + day * DAY, `c${index}`),
    newRecall(),
  );
const proven = (day: number): Recall => reviewed(['firm', day], ['firm', day]);

const chosen = (recalls: Record<string, Recall>, day: number, more: Partial<ChoiceRequest> = {}): string => {
  const choice = choose({
    graph,
    recalls: new Map(Object.entries(recalls)),
    at: START + day * DAY,
    recent: [],
    seed: 1,
    ...more,
  });
  return choice.kind === 'none' ? 'none' : `${choice.kind} ${choice.skill}`;
};

describe('the next skill', () => {
  it('is the first of the curriculum for somebody who has begun nothing', () => {
    expect(chosen({}, 0)).toBe('new a');
  });

  it('is what is due, the most forgotten first, before anything new', () => {
    const recalls = { a: proven(0), b: reviewed(['lost', 0], ['firm', 0], ['firm', 0]), c: proven(20) };
    expect(chosen(recalls, 20)).toBe('due b');
    expect(chosen({ ...recalls, b: proven(20) }, 20)).toBe('due a');
  });

  it('is what something else stands on, if both are due, even if it is remembered better', () => {
    const recalls = { a: proven(10), d: proven(0), b: proven(20) };
    expect(chosen(recalls, 20)).toBe('due a');
    expect(chosen({ ...recalls, a: proven(20) }, 20)).toBe('due d');
  });

  it('is the lowest of what stands on one another, if all of it is due, whatever is forgotten most', () => {
    const recalls = { a: proven(10), b: proven(20), d: proven(8), e: proven(0) };
    expect(chosen(recalls, 20, { recent: ['a'] })).toBe('due d');
    // What is under it and isn't due holds nothing up.
    expect(chosen({ ...recalls, a: proven(20), d: proven(20), c: proven(8) }, 20)).toBe('due e');
  });

  it('comes back in the same practice until it is proven, with another in between', () => {
    const once = { a: reviewed(['firm', 0]) };
    expect(chosen(once, 0, { recent: ['a'] })).toBe('new b');
    expect(chosen({ ...once, b: reviewed(['firm', 0]) }, 0, { recent: ['a', 'b'] })).toBe('unproven a');
    expect(chosen({ a: proven(0), b: proven(0) }, 0, { recent: ['a', 'b', 'a', 'b'] })).toBe('new c');
  });

  it('is let be for the day after it has been asked a few times and is still not proven', () => {
    const recalls = { a: reviewed(['lost', 0]), b: proven(0), c: proven(0) };
    const asked = Array.from({ length: ASKED_AT_MOST - 1 }, () => ['a', 'b']).flat();
    expect(chosen(recalls, 0, { recent: asked })).toBe('unproven a');
    expect(chosen(recalls, 0, { recent: [...asked, 'a', 'b'] })).toBe('ahead c');
    // Whatever else was asked how often.
    expect(chosen(recalls, 0, { recent: ['a', ...asked.map(() => 'b')] })).toBe('unproven a');
    expect(chosen(recalls, 0, { recent: [...Array(ASKED_AT_MOST).fill('a'), 'b'] })).toBe('ahead c');
  });

  it('is no new one when enough were begun that day, and a new one again on the next', () => {
    const recalls = { a: proven(0), b: proven(0), c: proven(0) };
    expect(NEW_A_DAY).toBe(3);
    expect(chosen(recalls, 0.2)).toMatch(/^ahead /);
    expect(chosen(recalls, 1)).toBe('new d');
    expect(chosen(recalls, 0.2, { newADay: 4 })).toBe('new d');
  });

  it('may be a new one after the clock ran ahead while others were begun, and has been put right', () => {
    const recalls = { a: proven(900), b: proven(900), c: proven(0), d: reviewed(['firm', 900], ['firm', 0]) };
    expect(chosen(recalls, 0, { newADay: 2, recent: [] })).toBe('due a');
    expect(begunOnDayOf(graph, new Map(Object.entries(recalls)), START)).toBe(1);
  });

  it('waits with a new skill until what it stands on is held', () => {
    expect(chosen({ a: reviewed(['firm', 0]), b: proven(0), c: proven(0) }, 0, { newADay: 9 })).toBe(
      'unproven a',
    );
    expect(chosen({ a: proven(0), b: proven(0), c: proven(0) }, 0, { newADay: 9 })).toBe('new d');
  });

  it('is practised ahead of its time when nothing needs practice, the longest unasked first', () => {
    const recalls = { a: proven(0), b: proven(0.5), c: proven(0.5) };
    const at = { newADay: 0 };
    expect(chosen(recalls, 0.6, at)).toBe('ahead a');
    expect(chosen(recalls, 0.6, { ...at, recent: ['a', 'b'] })).toBe('ahead c');
    expect(chosen(recalls, 0.6, { ...at, recent: ['c', 'a', 'b'] })).toBe('ahead c');
  });

  it('is none when there is nothing to practise', () => {
    expect(chosen({}, 0, { newADay: 0 })).toBe('none');
    expect(chosen({}, 0, { graph: graphOf([]) })).toBe('none');
  });

  it('is what a plan wants first, and then nothing else that is new', () => {
    const recalls = { a: proven(0), b: proven(0) };
    expect(chosen(recalls, 30, { planned: ['b', 'd'] })).toBe('planned b');
    expect(chosen({ ...recalls, b: proven(30) }, 30, { planned: ['b', 'd'], recent: ['b'] })).toBe('due a');
    expect(chosen({ a: proven(30), b: proven(30) }, 30, { planned: ['d'] })).toBe('planned d');
    const begun = { a: proven(30), b: proven(30), d: reviewed(['firm', 30]) };
    expect(chosen(begun, 30, { planned: ['d'], recent: ['d'] })).toBe('ahead a');
    expect(chosen(begun, 30, { planned: ['d'], recent: ['d', 'a'] })).toBe('planned d');
  });

  it('is chosen by the seed among equals, each of them for some seed', () => {
    const recalls = { a: proven(0), b: proven(0), c: proven(0) };
    const seeds = Array.from({ length: 40 }, (_, seed) => chosen(recalls, 20, { seed }));
    expect(new Set(seeds)).toEqual(new Set(['due a', 'due b', 'due c']));
  });
});

const arbitraryRequest: fc.Arbitrary<ChoiceRequest> = fc
  .tuple(
    arbitrarySkills,
    arbitraryHistory,
    fc.array(fc.nat(), { maxLength: 12 }),
    fc.record({
      seed: fc.integer(),
      newADay: fc.integer({ min: 0, max: 5 }),
      later: fc.integer({ min: -30 * DAY, max: 60 * DAY }),
      planned: fc.option(fc.array(fc.nat(), { maxLength: 4 }), { nil: undefined }),
    }),
  )
  .map(([skills, history, picks, { seed, newADay, later, planned }]) => {
    const ids = skills.map(({ id }) => id);
    const pick = (index: number): string => ids[index % ids.length]!;
    const recalls = replay(
      history.map((answer, index) => ({ ...answer, skill: pick(index * 7 + (seed % 3) + 3) })),
    );
    return {
      graph: graphOf(skills),
      recalls,
      at: (history.at(-1)?.at ?? START) + later,
      recent: picks.map(pick),
      seed,
      newADay,
      ...(planned ? { planned: planned.map(pick) } : {}),
    };
  });

describe('any choice', () => {
  it('is an open skill, and not the one just asked while another may be', () => {
    fc.assert(
      fc.property(arbitraryRequest, (request) => {
        const choice = choose(request);
        const open = openSkills(request.graph, request.recalls, request.at);
        const begun = open.filter((id) => request.recalls.has(id));
        if (choice.kind === 'none') {
          expect(begun).toEqual([]);
          return;
        }
        expect(open).toContain(choice.skill);
        if (begun.length > 1) expect(choice.skill).not.toBe(request.recent.at(-1));
      }),
      { numRuns: 500 },
    );
  });

  it('is something due, if anything but the one just asked is, or what a plan wants', () => {
    fc.assert(
      fc.property(arbitraryRequest, (request) => {
        const due = request.graph.skills
          .map(({ id }) => id)
          .filter((id) => id !== request.recent.at(-1) && isDue(recallOf(request.recalls, id), request.at));
        const { kind } = choose(request);
        if (due.length > 0) expect(['due', 'planned']).toContain(kind);
      }),
      { numRuns: 500 },
    );
  });

  it('never begins more than the new skills of a day', () => {
    fc.assert(
      fc.property(arbitrarySkills, fc.integer({ min: 0, max: 4 }), fc.nat(), (skills, newADay, seed) => {
        const graph: SkillGraph = graphOf(skills);
        const recalls = new Map<string, Recall>();
        const recent: string[] = [];
        for (let asked = 0; asked < 40; asked++) {
          const choice = choose({ graph, recalls, at: START + asked * 60_000, recent, seed, newADay });
          if (choice.kind === 'none') break;
          recalls.set(
            choice.skill,
            reviewAs(recallOf(recalls, choice.skill), 'firm', START + asked * 60_000, `c${asked}`),
          );
          recent.push(choice.skill);
        }
        expect(recalls.size).toBe(Math.min(newADay, skills.length));
      }),
    );
  });

  it('depends on its request alone', () => {
    fc.assert(
      fc.property(arbitraryRequest, (request) => {
        const shuffled = { ...request, recalls: new Map([...request.recalls].toReversed()) };
        expect(choose(structuredClone(request))).toEqual(choose(request));
        expect(choose(shuffled)).toEqual(choose(request));
      }),
    );
  });
});

describe('turns', () => {
  it('are whole numbers of 32 bits that differ by seed and by name', () => {
    fc.assert(
      fc.property(fc.integer(), fc.string(), (seed, name) => {
        const turn = turnOf(seed, name);
        expect(turn).toBe(turn >>> 0);
      }),
    );
    const turns = Array.from({ length: 100 }, (_, seed) => [turnOf(seed, 'a'), turnOf(seed, 'b')]).flat();
    expect(new Set(turns).size).toBe(200);
  });
});

describe('the forecast', () => {
  it('lists what was begun, the soonest first, and nothing else', () => {
    const recalls = new Map([
      ['a', reviewed(['sure', 0])],
      ['c', reviewed(['lost', 0])],
      ['gone', reviewed(['sure', 0])],
      ['b', reviewed(['firm', 0])],
    ]);
    expect(forecast(graph, recalls)).toEqual([
      { skill: 'c', due: START + 1 * DAY },
      { skill: 'b', due: START + 2 * DAY },
      { skill: 'a', due: START + 8 * DAY },
    ]);
  });

  it('is in order after any history and brings nothing back before it has begun to be forgotten', () => {
    fc.assert(
      fc.property(arbitrarySkills, arbitraryHistory, (skills, history) => {
        const ids = skills.map(({ id }) => id);
        const recalls = replay(history.map((answer, at) => ({ ...answer, skill: ids[at % ids.length]! })));
        const graph = graphOf(skills);
        const list = forecast(graph, recalls);
        expect(list.map(({ skill }) => skill).sort()).toEqual([...recalls.keys()].sort());
        expect(list.map(({ due }) => due)).toEqual(list.map(({ due }) => due).toSorted((a, b) => a - b));
        for (const { skill, due } of list) {
          const recall = recallOf(recalls, skill);
          expect(retrievability(recall, due)).toBeLessThan(1);
        }
      }),
    );
  });
});
