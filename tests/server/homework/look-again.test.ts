/** Where people sign in, practice is marked again on arrival: what is proven doesn't rest on the learner's own device. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../../shared/api.ts';
import { homeworkRoutes } from '../../../shared/api-homework.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import { judge, nextTask } from '../../../src/practice/index.ts';
import { blankAnswer, rightAnswer } from '../../../src/questions/index.ts';
import { course } from '../../homework/course.ts';
import { answerWith, MORNING } from '../../support/answers.ts';
import { type ClassServing, classServing } from './class-serving.ts';

let serving: ClassServing;
beforeAll(async () => {
  serving = await classServing(3);
});
afterAll(() => serving.end());

/** An honest answer, as the page makes it. */
function answered(learner: string, number: number, right: boolean): AnswerRecord {
  const skill = 'status-lamps';
  const seen = new Set<string>();
  const at = serving.clock.now - 60_000 + number;
  const seed = 'look-again';
  const made = nextTask({ course, recalls: new Map(), at, seed, number, recent: [], seen, only: skill });
  if (!made.ok) throw new Error('no question');
  const { question } = made.task;
  const answer = right ? rightAnswer(question) : blankAnswer(question);
  const help = { hint: false, explanation: false };
  return judge(made.task, { id: `a${number}`, learner, at, answer, help, secondsUsed: 20 }, new Map()).record;
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
    const { id } = serving.learners[0]!;
    const { results } = await send(0, [answered(id, 0, true), answered(id, 1, true)]);
    expect(results.map(({ result }) => result)).toEqual(['kept', 'kept']);
    const page = await serving.learners[0]!.call(apiRoutes.answers);
    for (const entry of page.answers) expect(entry).toMatchObject({ kind: 'answer', correctedMark: null });
    expect(await standing(0)).toMatchObject({ kind: 'held' });
  });

  it('has the mark of the solver here, whatever mark was sent; what was sent stays beside it', async () => {
    const { id } = serving.learners[1]!;
    const forged = [0, 1].map((number): AnswerRecord => {
      const wrong = answered(id, number, false);
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
    expect(recalls['status-lamps']).toMatchObject({ lapses: expect.any(Number), provenOn: [] });
    expect(await standing(1)).toEqual({ kind: 'not-yet', begun: true });
  });

  it('proves nothing by one circuit under two names', async () => {
    const { id } = serving.learners[2]!;
    const one = answered(id, 0, true);
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
