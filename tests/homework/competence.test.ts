import { describe, expect, it } from 'vitest';
import type { SkillAnswer } from '../../shared/memory.ts';
import { competenceMatrix, refreshersDue } from '../../src/homework/index.ts';
import { isHeld, recallOf, replay } from '../../src/memory/index.ts';
import { course, HOUR, OPENS } from './course.ts';

const DAY = 24 * HOUR;

const answer = (number: number, day: number, circuit: string, share = 1): SkillAnswer => ({
  id: `a${number}-${day}`,
  skill: 'make-contact',
  circuit,
  at: OPENS + day * DAY,
  attempt: {
    share,
    // A sequence of eight states: 6.6 times as likely as luck, so that three right answers prove a skill.
    parts: { asked: 8, right: 8 * share, luck: 0.1 },
    help: { hint: false, explanation: false },
    secondsUsed: null,
    secondsExpected: 30,
  },
});

const cell = (history: readonly SkillAnswer[], day: number) =>
  competenceMatrix(course, [{ id: 'ada', histories: [history] }], OPENS + day * DAY, ['make-contact'])
    .rows[0]!.cells[0]!;

describe('the competence matrix', () => {
  it('says not yet before anything was answered, and after one right answer', () => {
    expect(cell([], 0)).toEqual({ kind: 'not-yet', begun: false });
    expect(cell([answer(1, 0, 'c1')], 0)).toEqual({ kind: 'not-yet', begun: true });
  });

  it('says held once it is proven, when that was, and on which', () => {
    const history = [answer(1, 0, 'c1'), answer(2, 2, 'c2'), answer(3, 3, 'c3'), answer(4, 4, 'c4')];
    expect(cell(history.slice(0, 2), 2)).toEqual({ kind: 'not-yet', begun: true });
    expect(cell(history, 4)).toMatchObject({
      kind: 'held',
      provenAt: OPENS + 3 * DAY,
      provenOn: ['c1', 'c2', 'c3'],
      lastAt: OPENS + 4 * DAY,
    });
  });

  it('counts the same circuit twice as one proof', () => {
    const same = [0, 1, 2, 3, 4].map((day) => answer(day, day, 'c1'));
    expect(cell(same, 4).kind).toBe('not-yet');
    expect(cell([...same, answer(5, 5, 'c2'), answer(6, 6, 'c3')], 6)).toMatchObject({
      provenOn: ['c1', 'c2', 'c3'],
    });
  });

  it('says fading when the memory has fallen below the target, and keeps when it was proven', () => {
    const history = [answer(1, 0, 'c1'), answer(2, 2, 'c2'), answer(3, 3, 'c3')];
    const later = cell(history, 400);
    expect(later).toMatchObject({ kind: 'fading', provenAt: OPENS + 3 * DAY });
    expect(later.kind === 'fading' && later.chance).toBeLessThan(0.9);
  });

  it('says not yet after it was lost, and when it was proven anew', () => {
    const proven = [answer(1, 0, 'c1'), answer(2, 2, 'c2'), answer(3, 3, 'c3')];
    const lost = [...proven, answer(4, 20, 'c4', 0), answer(5, 20, 'c5', 0)];
    expect(cell(lost, 20)).toEqual({ kind: 'not-yet', begun: true });
    const again = [21, 22, 23, 24].map((day) => answer(day, day, `c${day}`));
    expect(cell([...lost, ...again], 24)).toMatchObject({
      kind: 'held',
      provenAt: OPENS + 24 * DAY,
      provenOn: ['c21', 'c22', 'c23', 'c24'],
    });
  });

  it('says after one lost answer what proved it before and since', () => {
    const proven = [answer(1, 0, 'c1'), answer(2, 2, 'c2'), answer(3, 3, 'c3')];
    const again = [...proven, answer(4, 20, 'c4', 0), answer(5, 21, 'c5'), answer(6, 22, 'c6')];
    expect(cell(again.slice(0, 4), 20).kind).toBe('not-yet');
    expect(cell(again, 22)).toMatchObject({ provenOn: ['c1', 'c2', 'c3', 'c5', 'c6'] });
  });

  it('puts practice and homework in order of time, and counts an answer in both once', () => {
    const practice = [answer(1, 0, 'c1'), answer(3, 4, 'c3')];
    const homework = [answer(2, 3, 'c2'), answer(3, 4, 'c3')];
    const together = (histories: readonly (readonly SkillAnswer[])[]) =>
      competenceMatrix(course, [{ id: 'ada', histories }], OPENS + 5 * DAY).rows;
    expect(together([practice, homework])).toEqual(
      together([[answer(1, 0, 'c1'), answer(2, 3, 'c2'), answer(3, 4, 'c3')]]),
    );
  });

  it('agrees with the memory about what is held, for every skill and day', () => {
    const history = [
      answer(1, 0, 'c1'),
      answer(2, 2, 'c2'),
      answer(3, 3, 'c3'),
      answer(4, 20, 'c4', 0),
      answer(5, 25, 'c5'),
    ];
    const standing = new Set<boolean>();
    for (let day = 0; day < 60; day += 3) {
      const before = history.filter(({ at }) => at <= OPENS + day * DAY);
      const held = isHeld(recallOf(replay(before), 'make-contact'), OPENS + day * DAY);
      expect(cell(before, day).kind === 'held').toBe(held);
      standing.add(held);
    }
    expect(standing.size).toBe(2);
  });

  it('has a column for each skill of the course, in its order', () => {
    const { skills, rows } = competenceMatrix(course, [{ id: 'ada', histories: [] }], OPENS);
    expect(skills.map(({ id }) => id)).toEqual(course.graph.skills.map(({ id }) => id));
    expect(rows[0]!.cells).toHaveLength(skills.length);
  });
});

describe('refreshers', () => {
  it('are due for what was proven, the longest due first, and for nothing else', () => {
    const matrix = competenceMatrix(
      course,
      [
        { id: 'ada', histories: [[answer(1, 10, 'c1'), answer(2, 12, 'c2'), answer(7, 13, 'c3')]] },
        { id: 'ben', histories: [[answer(3, 0, 'c1'), answer(4, 2, 'c2'), answer(8, 3, 'c3')]] },
        { id: 'cem', histories: [[answer(5, 0, 'c1')]] },
      ],
      OPENS + 20 * DAY,
    );
    expect(refreshersDue(matrix, OPENS + 14 * DAY)).toEqual([]);
    const due = refreshersDue(matrix, OPENS + 3000 * DAY);
    expect(due.map(({ person }) => person)).toEqual(['ben', 'ada']);
    const [first] = due;
    expect(first).toEqual({ person: 'ben', skill: 'make-contact', dueAt: expect.any(Number) });
    // To the moment.
    expect(refreshersDue(matrix, first!.dueAt)).toEqual([first]);
    expect(refreshersDue(matrix, first!.dueAt - 1)).toEqual([]);
    const cells = matrix.rows.map(({ cells }) => cells[0]!);
    expect(cells.flatMap((cell) => (cell.kind === 'not-yet' ? [] : [cell.dueAt])).toSorted()).toEqual(
      due.map(({ dueAt }) => dueAt),
    );
  });
});
