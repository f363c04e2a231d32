/** A paper worked on by somebody who sends whatever can be sent: too much, what wasn't asked, at the same moment, from outside. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import { peopleRoutes } from '../../shared/api-people.ts';
import type { PaperView } from '../../shared/homework-views.ts';
import { answersTo, type ClassServing, classServing, type Person } from '../server/homework/class-serving.ts';

const {
  beginPaper,
  saveAnswers,
  submitPaper,
  paper: viewPaper,
  askHint,
  reviewPaper,
  myHomework,
} = homeworkRoutes;

let serving: ClassServing;
let learner: Person;
let paper: PaperView;
let set: string;

beforeEach(async () => {
  serving = await classServing(2);
  learner = serving.learners[0]!;
  const issued = await serving.issued({ items: 3, attempts: 1, help: 'hints', review: 'after-submitting' });
  set = issued.set.id;
  paper = await learner.call(beginPaper, { params: { set } });
});
afterEach(() => serving.end());

const params = () => ({ paper: paper.id });
const save = (answers: readonly object[]) =>
  learner.call(saveAnswers, { params: params(), body: { answers } });

describe('what is saved on a paper', () => {
  it('is what was asked, in the words offered, and nothing else', async () => {
    const answers = await answersTo(serving, paper, 'right');
    for (const [index, right] of answers.entries()) {
      if (!('states' in right.answer)) continue;
      const { answer } = right;
      const known = Object.keys(answer.states)[0]!;
      const wrong = [
        { ...answer, states: { ...answer.states, '-X99': 'lit' } },
        { ...answer, states: { ...answer.states, [known]: 'x'.repeat(5000) } },
        {
          ...answer,
          states: Object.fromEntries(Array.from({ length: 500 }, (_, at) => [`-H${at + 500}`, 'lit'])),
        },
        { ...answer, states: JSON.parse('{"constructor":"lit"}') },
      ];
      const { results } = await save(
        wrong.map((each, at) => ({ ...right, id: `w-${index}-${at}`, answer: each })),
      );
      for (const result of results)
        expect(result).toMatchObject({ result: 'refused', problem: { code: 'bad-answer' } });
    }
    expect((await save(answers)).results.map(({ result }) => result)).toEqual(answers.map(() => 'kept'));
  });

  it('leaves the paper as small as it is, however often it was changed', async () => {
    const [answer] = await answersTo(serving, paper, 'right');
    const before = JSON.stringify(await learner.call(viewPaper, { params: params() })).length;
    for (let round = 0; round < 10; round++)
      await save(Array.from({ length: 100 }, (_, at) => ({ ...answer!, id: `r-${round}-${at}` })));
    const view = await learner.call(viewPaper, { params: params() });
    expect(view.saved).toMatchObject([{ id: 'r-9-99', number: 1000 }]);
    expect(JSON.stringify(view).length).toBeLessThan(before + 2000);
  });

  it('is never more than ten thousand answers', async () => {
    const [answer] = await answersTo(serving, paper, 'right');
    for (let round = 0; round < 100; round++)
      await save(Array.from({ length: 100 }, (_, at) => ({ ...answer!, id: `m-${round}-${at}` })));
    await learner.refused(
      saveAnswers,
      { params: params(), body: { answers: [{ ...answer!, id: 'more' }] } },
      'bad-value',
    );
    expect(await learner.call(submitPaper, { params: params() })).toMatchObject({ answered: 1 });
  }, 120_000);
});

describe('somebody who was taken out of the class', () => {
  it('no longer works on its papers, and sees those that were marked', async () => {
    const [answer] = await answersTo(serving, paper, 'right');
    await save([answer!]);
    const remove = { params: { class: serving.classId, person: learner.id } };
    await serving.tutor.call(peopleRoutes.removeMember, remove);
    const more = { params: params(), body: { answers: [{ ...answer!, id: 'later' }] } };
    await learner.refused(saveAnswers, more, 'no-such-thing');
    await learner.refused(viewPaper, { params: params() }, 'no-such-thing');
    await learner.refused(askHint, { params: params(), body: { item: 0 } }, 'no-such-thing');
    await learner.refused(submitPaper, { params: params() }, 'no-such-thing');
    await learner.refused(beginPaper, { params: { set } }, 'no-such-thing');
    expect((await learner.call(myHomework)).sets).toEqual([]);
    // Back in it, everything stands as it was left.
    await serving.store.people.joining.asKnown(
      (await serving.store.people.classes.get(serving.classId))!.joiningCode.replace('-', ''),
      learner.id,
    );
    expect((await learner.call(viewPaper, { params: params() })).saved).toHaveLength(1);
    await learner.call(submitPaper, { params: params() });
    await serving.tutor.call(peopleRoutes.removeMember, remove);
    expect((await learner.call(reviewPaper, { params: params() })).id).toBe(paper.id);
  });
});

describe('a paper handed in while answers are being saved', () => {
  it('counts what was acknowledged, once, and nothing afterwards', async () => {
    const answers = await answersTo(serving, paper, 'right');
    const saves = Array.from({ length: 40 }, (_, at) => ({
      ...answers[at % answers.length]!,
      id: `race-${at}`,
    }));
    const asked = await Promise.all(
      saves.flatMap((answer, at) => [
        learner.ask(saveAnswers, { params: params(), body: { answers: [answer] } }),
        ...(at % 8 === 3 ? [learner.ask(submitPaper, { params: params() })] : []),
      ]),
    );
    const bodies = asked.map((reply) => ({ status: reply.statusCode, body: reply.json() }));
    const submitted = bodies.filter(({ body }) => body.submittedAt !== undefined);
    expect(submitted).toHaveLength(5);
    expect(new Set(submitted.map(({ body }) => body.submittedAt)).size).toBe(1);
    const kept = bodies.flatMap(({ status, body }) =>
      status === 200 && body.results
        ? body.results.filter(({ result }: { result: string }) => result === 'kept')
        : [],
    );
    const refused = bodies.filter(({ status }) => status === 409);
    expect(kept.length + refused.length).toBe(40);
    for (const { body } of refused) expect(body.code).toBe('submitted');
    expect((await serving.store.homework.answersOf(paper.id)).map(({ id }) => id).sort()).toEqual(
      kept.map(({ id }: { id: string }) => id).sort(),
    );
  });
});
