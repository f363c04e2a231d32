import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSkills, isHeld, openSkills, replay, type SkillGraph } from '../../src/memory/index.ts';
import {
  courseOf,
  MOST_PLACING,
  nextTask,
  type PlacingAnswer,
  placing,
  withPlacement,
} from '../../src/practice/index.ts';
import { told } from '../support/in-english.ts';
import { ownBank } from '../support/own-bank.ts';

const DAY = 86_400_000;

function graphOf(needs: readonly (readonly number[])[]): SkillGraph {
  const made = checkSkills(
    needs.map((under, index) => ({
      id: `skill-${index}`,
      title: `Skill ${index}`,
      needs: under.map((need) => `skill-${need}`),
    })),
  );
  if (!made.ok) throw new Error(told(made.problems)[0]?.message);
  return made.value;
}

/** Asks until it is found out; `knows` answers. */
function place(graph: SkillGraph, knows: (skill: string, time: number) => boolean) {
  const answers: PlacingAnswer[] = [];
  for (;;) {
    const next = placing(graph, answers);
    if (next.kind === 'found') return { known: next.known, answers };
    answers.push({ skill: next.skill, right: knows(next.skill, answers.length) });
  }
}

/** Graphs of up to 40 skills, each standing on a few before it. */
const graphs = fc
  .array(fc.array(fc.nat(), { maxLength: 3 }), { minLength: 1, maxLength: 40 })
  .map((rows) =>
    graphOf(rows.map((row, index) => (index === 0 ? [] : [...new Set(row.map((number) => number % index))]))),
  );

describe('placing', () => {
  it('asks at most eight questions, and what it finds known is closed downwards', () => {
    fc.assert(
      fc.property(graphs, fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }), (graph, luck) => {
        const { known, answers } = place(graph, (_, time) => luck[time] ?? false);
        expect(answers.length).toBeLessThanOrEqual(MOST_PLACING);
        for (const skill of known)
          expect(known).toEqual(expect.arrayContaining([...(graph.byId.get(skill)?.needs ?? [])]));
      }),
    );
  });

  it('finds exactly how far somebody has come along a line of fifteen skills', () => {
    const line = graphOf(Array.from({ length: 15 }, (_, index) => (index === 0 ? [] : [index - 1])));
    for (let reached = 0; reached <= 15; reached++) {
      const { known } = place(line, (skill) => Number(skill.slice(6)) < reached);
      expect(known).toHaveLength(reached);
    }
  });

  it('never calls known what an honest learner cannot do', () => {
    fc.assert(
      fc.property(graphs, fc.nat(), (graph, salt) => {
        const can = new Set<string>();
        graph.skills.forEach(({ id, needs }, index) => {
          if (needs.every((need) => can.has(need)) && (salt >> (index % 31)) % 3 !== 0) can.add(id);
        });
        const { known } = place(graph, (skill) => can.has(skill));
        expect(known.filter((skill) => !can.has(skill))).toEqual([]);
      }),
    );
  });

  it('asks the top again on another circuit and takes back what was luck', () => {
    const line = graphOf([[], [0], [1]]);
    const lucky = placing(line, [
      { skill: 'skill-1', right: true },
      { skill: 'skill-2', right: true },
    ]);
    expect(lucky).toEqual({ kind: 'ask', skill: 'skill-2' });
    const found = placing(line, [
      { skill: 'skill-1', right: true },
      { skill: 'skill-2', right: true },
      { skill: 'skill-2', right: false },
      { skill: 'skill-1', right: true },
    ]);
    expect(found).toEqual({ kind: 'found', known: ['skill-0', 'skill-1'] });
  });

  it('is over at once for somebody who cannot do the first skill of a line', () => {
    const { known, answers } = place(graphOf([[], [0], [1], [2]]), () => false);
    expect(known).toEqual([]);
    expect(answers.length).toBeLessThanOrEqual(2);
  });

  it('goes by what a bank still has: answers about other skills say nothing', () => {
    expect(placing(graphOf([[]]), [{ skill: 'gone', right: true }])).toEqual({
      kind: 'ask',
      skill: 'skill-0',
    });
  });
});

describe('practice after a placement', () => {
  const graph = graphOf([[], [0], [1]]);
  const placement = { at: DAY, known: ['skill-0'] };
  const answer = (id: string, share: number, at: number) => ({
    id,
    skill: 'skill-0',
    circuit: id,
    at,
    attempt: {
      share,
      parts: { asked: 1, right: share, luck: 0.55 },
      help: { hint: false, explanation: false },
      secondsUsed: 10,
      secondsExpected: 30,
    },
  });

  it('opens what stands on what is known', () => {
    expect(openSkills(graph, new Map(), DAY)).toEqual(['skill-0']);
    expect(openSkills(graph, withPlacement(new Map(), placement), DAY)).toEqual(['skill-0', 'skill-1']);
  });

  it('brings what is known back within a week to be shown', () => {
    const recalls = withPlacement(new Map(), placement);
    expect(isHeld(recalls.get('skill-0')!, DAY)).toBe(true);
    expect(isHeld(recalls.get('skill-0')!, 8 * DAY)).toBe(false);
  });

  it('believes a wrong answer more than the placement', () => {
    const lost = withPlacement(replay([answer('a', 0, 2 * DAY)]), placement);
    expect(isHeld(lost.get('skill-0')!, 2 * DAY)).toBe(false);
  });

  it('takes it as known as long as the answers don’t speak against it, of whatever kind they are', () => {
    const once = withPlacement(replay([answer('a', 1, 2 * DAY)]), placement);
    expect(isHeld(once.get('skill-0')!, 2 * DAY)).toBe(true);
  });

  it('changes nothing where there was none', () => {
    const recalls = replay([answer('a', 1, DAY)]);
    expect(withPlacement(recalls, null)).toBe(recalls);
  });

  it('begins beyond what is known in the banks that come with the program', () => {
    const course = courseOf(ownBank());
    if (!course.ok) throw new Error('the banks are refused');
    const [first] = course.value.graph.skills;
    const next = (found: readonly string[]) => {
      const made = nextTask({
        course: course.value,
        recalls: new Map(),
        at: DAY,
        seed: 'placement',
        number: 0,
        recent: [],
        seen: new Set(),
        placement: { at: DAY, known: [...found] },
      });
      return made.ok ? made.task.skill : made.reason;
    };
    expect(next([])).toBe(first?.id);
    expect(next([first?.id ?? ''])).not.toBe(first?.id);
  });
});
