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
  attempt: { share, help: { hint: false, explanation: false }, secondsUsed: null, secondsExpected: 30 },
});

const cell = (history: readonly SkillAnswer[], day: number) =>
  competenceMatrix(course, [{ id: 'ada', histories: [history] }], OPENS + day * DAY, ['make-contact'])
    .rows[0]!.cells[0]!;

describe('the competence matrix', () => {
  it('says not yet before anything was answered, and after one right answer', () => {
    expect(cell([], 0)).toEqual({ kind: 'not-yet', begun: false });
    expect(cell([answer(1, 0, 'c1')], 0)).toEqual({ kind: 'not-yet', begun: true });
  });

  it('says held once it is proven on two circuits, when that was, and on which', () => {
    const history = [answer(1, 0, 'c1'), answer(2, 3, 'c2'), answer(3, 4, 'c3')];
    expect(cell(history, 4)).toMatchObject({
      kind: 'held',
      provenAt: OPENS + 3 * DAY,
      provenOn: ['c1', 'c2'],
      lastAt: OPENS + 4 * DAY,
    });
  });

  it('counts the same circuit twice as one proof', () => {
    expect(cell([answer(1, 0, 'c1'), answer(2, 3, 'c1')], 3).kind).toBe('not-yet');
  });

  it('says fading when the memory has fallen below the target, and keeps when it was proven', () => {
    const history = [answer(1, 0, 'c1'), answer(2, 3, 'c2')];
    const later = cell(history, 400);
    expect(later).toMatchObject({ kind: 'fading', provenAt: OPENS + 3 * DAY });
    expect(later.kind === 'fading' && later.chance).toBeLessThan(0.9);
  });

  it('says not yet after it was lost, and when it was proven anew', () => {
    const lost = [answer(1, 0, 'c1'), answer(2, 3, 'c2'), answer(3, 20, 'c3', 0)];
    expect(cell(lost, 20)).toEqual({ kind: 'not-yet', begun: true });
    const again = [...lost, answer(4, 21, 'c4'), answer(5, 22, 'c5')];
    expect(cell(again, 22)).toMatchObject({
      kind: 'held',
      provenAt: OPENS + 22 * DAY,
      provenOn: ['c4', 'c5'],
    });
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
    const history = [answer(1, 0, 'c1'), answer(2, 3, 'c2'), answer(3, 20, 'c3', 0), answer(4, 25, 'c4')];
    for (let day = 0; day < 60; day += 3) {
      const before = history.filter(({ at }) => at <= OPENS + day * DAY);
      const held = isHeld(recallOf(replay(before), 'make-contact'), OPENS + day * DAY);
      expect(cell(before, day).kind === 'held').toBe(held);
    }
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
        { id: 'ada', histories: [[answer(1, 10, 'c1'), answer(2, 13, 'c2')]] },
        { id: 'ben', histories: [[answer(3, 0, 'c1'), answer(4, 3, 'c2')]] },
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
