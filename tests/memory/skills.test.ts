import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Skill, skillList } from '../../shared/memory.ts';
import { problem, type ToldProblem } from '../../shared/problem.ts';
import { checkSkills, isHeld, openSkills, recallOf, replay } from '../../src/memory/index.ts';
import { told } from '../support/in-english.ts';
import { arbitraryHistory, arbitrarySkills, DAY, graphOf, reviewAs, START, skill } from './arbitraries.ts';

const problemsOf = (skills: readonly Skill[]): readonly ToldProblem[] => {
  const checked = checkSkills(skills);
  return checked.ok ? [] : told(checked.problems);
};
const heldAt = (at: number) => reviewAs(reviewAs({ kind: 'new' }, 'firm', at, 'c1'), 'firm', at, 'c2');

describe('a list of skills', () => {
  it('is put in an order in which each comes after what it stands on', () => {
    fc.assert(
      fc.property(arbitrarySkills, (skills) => {
        const graph = graphOf(skills);
        expect(new Set(graph.skills)).toEqual(new Set(skills));
        expect(graph.skills.length).toBe(skills.length);
        graph.skills.forEach(({ needs }, index) => {
          const before = graph.skills.slice(0, index).map(({ id }) => id);
          expect(before).toEqual(expect.arrayContaining([...needs]));
        });
      }),
    );
  });

  it('that already is in such an order stays as it is', () => {
    const skills = [skill('b'), skill('a'), skill('d', 'a'), skill('c', 'b', 'd')];
    expect(graphOf(skills).skills).toEqual(skills);
  });

  it('is refused with every mistake at once, each with the place where it was written', () => {
    const skills = [
      skill('a', 'nowhere'),
      skill('b', 'c'),
      skill('c', 'b'),
      skill('a'),
      skill('self', 'self', 'also-nowhere'),
    ];
    const checked = checkSkills(skills, (index) => ({ file: 'topic.md', line: 10 + index }));
    expect(checked.ok ? [] : checked.problems.map(({ code, line }) => [code, line])).toEqual([
      ['duplicate-skill', 13],
      ['unknown-skill', 10],
      ['unknown-skill', 14],
      ['skill-circle', 11],
      ['skill-circle', 14],
    ]);
  });

  it('is shown the whole circle', () => {
    const [circle] = problemsOf([skill('a', 'b'), skill('b', 'c'), skill('c', 'a'), skill('d', 'a')]);
    expect(circle?.message).toBe('No skill can be first: a stands on b stands on c stands on a.');
  });

  it('is accepted or refused with well-formed problems, whatever its names are', () => {
    const name = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f');
    const wild = fc.array(
      fc.record({ id: name, title: fc.constant('x'), needs: fc.array(name, { maxLength: 3 }) }),
      { maxLength: 8 },
    );
    let refused = 0;
    fc.assert(
      fc.property(wild, (skills) => {
        expect(skillList.safeParse(skills).success).toBe(true);
        const checked = checkSkills(skills);
        if (checked.ok) {
          expect(checked.value.skills.length).toBe(skills.length);
          return;
        }
        refused++;
        expect(checked.problems.length).toBeGreaterThan(0);
        for (const found of told(checked.problems)) expect(problem.parse(found)).toEqual(found);
      }),
      { numRuns: 1000 },
    );
    expect(refused).toBeGreaterThan(100);
  });

  it('names every skill on a circle in some circle, and none that only stands on one', () => {
    const skills = [
      skill('above', 'a'),
      skill('a', 'b', 'c'),
      skill('b', 'a'),
      skill('c', 'a'),
      skill('under'),
      skill('x', 'y', 'under'),
      skill('y', 'x', 'a'),
    ];
    const said = problemsOf(skills)
      .filter(({ code }) => code === 'skill-circle')
      .flatMap(({ message }) => message.match(/\b(?:above|under|[abcxy])(?= stands|\.)/g) ?? []);
    expect([...new Set(said)].sort()).toEqual(['a', 'b', 'c', 'x', 'y']);
  });

  it('of a thousand skills in one chain, written backwards, is put in order', () => {
    const chain = Array.from({ length: 1000 }, (_, at) =>
      at === 0 ? skill('s0') : skill(`s${at}`, `s${at - 1}`),
    );
    expect(graphOf(chain.toReversed()).skills).toEqual(chain);
  });
});

describe('an open skill', () => {
  const graph = graphOf([skill('base'), skill('next', 'base'), skill('top', 'next', 'base')]);

  it('stands on nothing, or on what is held', () => {
    expect(openSkills(graph, new Map(), START)).toEqual(['base']);
    expect(openSkills(graph, new Map([['base', heldAt(START)]]), START)).toEqual(['base', 'next']);
  });

  it('closes again while it is not begun and what it stands on is forgotten', () => {
    const recalls = new Map([['base', heldAt(START)]]);
    expect(openSkills(graph, recalls, START + 30 * DAY)).toEqual(['base']);
  });

  it('stays open once it is begun', () => {
    const recalls = new Map([
      ['base', heldAt(START)],
      ['next', reviewAs({ kind: 'new' }, 'lost', START, 'c1')],
    ]);
    expect(openSkills(graph, recalls, START + 30 * DAY)).toEqual(['base', 'next']);
  });

  it('is begun or has everything under it held, after any history', () => {
    fc.assert(
      fc.property(arbitrarySkills, arbitraryHistory, (skills, history) => {
        const graph = graphOf(skills);
        const ids = skills.map(({ id }) => id);
        const recalls = replay(
          history.map((answer, index) => ({ ...answer, skill: ids[index % ids.length]! })),
        );
        const at = history.at(-1)?.at ?? START;
        const open = openSkills(graph, recalls, at);
        for (const { id, needs } of skills)
          expect(open.includes(id)).toBe(
            recalls.has(id) || needs.every((need) => isHeld(recallOf(recalls, need), at)),
          );
      }),
    );
  });
});
