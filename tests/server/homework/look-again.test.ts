/** Where people sign in, practice is marked again on arrival: what is proven doesn't rest on the learner's own device. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../../shared/api.ts';
import { homeworkRoutes } from '../../../shared/api-homework.ts';
import type { IssuedQuestion } from '../../../shared/issued.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import { course } from '../../homework/course.ts';
import { answerWith, MORNING } from '../../support/answers.ts';
import { answerIssued } from '../../support/issued-answers.ts';
import { type ClassServing, classServing } from './class-serving.ts';

let serving: ClassServing;
beforeAll(async () => {
  serving = await classServing(3);
  for (const { id } of serving.learners)
    issued.push([
      ...(await serving.store.issued.issue(id, Array(8).fill({ skill: 'status-lamps', reviews: 0 }))),
    ]);
});
afterAll(() => serving.end());

/** Questions issued to each of the learners, on one skill. */
const issued: IssuedQuestion[][] = [];

/** An honest answer, as the page makes it. */
function answered(who: number, number: number, right: boolean): AnswerRecord {
  const { id: learner } = serving.learners[who]!;
  const at = serving.clock.now + number;
  const before = issued[who]!.slice(0, number).map((_, earlier) => answered(who, earlier, right).circuit);
  const manner = { id: `a${number}`, learner, at, right, seen: new Set(before) };
  return answerIssued(course, issued[who]![number]!, manner);
}

const send = (who: number, answers: readonly AnswerRecord[]) =>
  serving.learners[who]!.call(apiRoutes.keepAnswers, { body: { answers } });

const standing = async (who: number) => {
  const { matrix } = await serving.tutor.call(homeworkRoutes.competence, {
    params: { class: serving.classId },
  });
  const column = matrix.skills.findIndex(({ id }) => id === 'status-lamps');
  return matrix.rows.find(({ person }) => person === serving.learners[who]!.id)!.cells[column]!;
};

describe('practice of people who sign in', () => {
  it('is taken as it is where the solver here says the same', async () => {
    const answers = Array.from({ length: 8 }, (_, number) => answered(0, number, true));
    const { results } = await send(0, answers);
    expect(results.map(({ result }) => result)).toEqual(answers.map(() => 'kept'));
    const page = await serving.learners[0]!.call(apiRoutes.answers);
    for (const entry of page.answers) expect(entry).toMatchObject({ kind: 'answer', correctedMark: null });
    expect(await standing(0)).toMatchObject({ kind: 'held' });
  });

  it('has the mark of the solver here, whatever mark was sent; what was sent stays beside it', async () => {
    const forged = [0, 1].map((number): AnswerRecord => {
      const wrong = answered(1, number, false);
      return {
        ...wrong,
        mark: { ...wrong.mark, share: 1, correct: true },
        attempt: { ...wrong.attempt, share: 1 },
        grade: 'sure',
      };
    });
    await send(1, forged);
    const page = await serving.learners[1]!.call(apiRoutes.answers);
    expect(page.answers.map((entry) => entry.kind === 'answer' && entry.answer)).toEqual(forged);
    for (const entry of page.answers)
      expect(entry).toMatchObject({ correctedMark: { share: 0, correct: false } });
    const { recalls } = await serving.learners[1]!.call(apiRoutes.recalls);
    expect(recalls['status-lamps']).toMatchObject({ lapses: 1, lostLately: 2 });
    expect(await standing(1)).toEqual({ kind: 'not-yet', begun: true });
  });

  it('proves nothing by one circuit under two names', async () => {
    const one = answered(2, 0, true);
    await send(2, [one, { ...one, id: 'again', at: one.at + 1, circuit: 'another-name' }]);
    expect(await standing(2)).toEqual({ kind: 'not-yet', begun: true });
    expect(await serving.store.check()).toEqual([]);
  });

  it('earns nothing by a question that has no right answer', async () => {
    const { id } = serving.learners[2]!;
    const record = answerWith({ id: 'odd', at: MORNING, learner: id });
    const odd: AnswerRecord = {
      ...record,
      question: {
        ...record.question,
        scenario: { ...record.question.scenario, acts: [{ kind: 'press', device: '-Z9' }] },
      },
    };
    const { results } = await send(2, [odd]);
    expect(results[0]!.result).toBe('kept');
    const { answers } = await serving.learners[2]!.call(apiRoutes.answers);
    expect(answers.at(-1)).toMatchObject({ correctedMark: { share: 0 } });
  });
});
