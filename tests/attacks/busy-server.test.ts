/** Whatever somebody sends to keep the server busy: others are served meanwhile, and it earns nothing. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { WorkThreads } from '../../src/server/work/threads.ts';
import { type ClassServing, classServing, requestFor } from '../server/class-serving.ts';
import { answerWith } from '../support/answers.ts';
import { answerAbout, flashers, hostileAnswers, netOfLamps } from './hostile-answers.ts';

let server: ClassServing;
const work = new WorkThreads();
beforeAll(async () => {
  server = await classServing({ work });
});
afterAll(async () => {
  await server.end();
  await work.close();
});

const keep = requestFor(apiRoutes.keepAnswers, {});

describe('answers that take long to mark', () => {
  it('keep nobody else waiting: another learner’s are marked in between', async () => {
    const { learner, otherLearner } = server;
    const order: string[] = [];
    const send = async (who: typeof learner, what: string, answers: readonly AnswerRecord[]) => {
      const reply = await who.browser.ask({ ...keep, payload: { answers } });
      order.push(what);
      expect(reply.statusCode).toBe(200);
      return reply.json() as { results: { result: string }[] };
    };
    const net = netOfLamps(12);
    const hostile = Array.from({ length: 12 }, (_, at) =>
      answerAbout(net, [], { id: `net-${at}`, learner: learner.person.id }),
    );
    const sent = send(learner, 'hostile', hostile);
    const honest = send(otherLearner, 'honest', [
      answerWith({ id: 'a', at: 0, learner: otherLearner.person.id }),
    ]);
    const health = server.ask(requestFor(apiRoutes.health, {})).then(() => order.push('health'));
    await Promise.all([sent, honest, health]);
    expect(order).toEqual(['health', 'honest', 'hostile']);
    expect((await sent).results.every(({ result }) => result === 'kept')).toBe(true);
  });

  it('are kept and earn nothing where they are larger than anything that is asked', async () => {
    const { learner } = server;
    const lit = answerAbout(flashers(130), [], { id: 'large', learner: learner.person.id });
    const right = { ...lit, mark: { ...lit.mark, share: 1, correct: true } };
    const { results } = await learner.browser.call(apiRoutes.keepAnswers, { body: { answers: [right] } });
    expect(results).toMatchObject([{ result: 'kept' }]);
    const { answers } = await learner.browser.call(apiRoutes.answers, { query: '?limit=100' });
    expect(answers.find((entry) => entry.kind === 'answer' && entry.answer.id === 'large')).toMatchObject({
      correctedMark: { share: 0, correct: false },
    });
  });

  it('are kept and earn nothing where marking them does not end in time, and those beside them are marked', async () => {
    const impatient = new WorkThreads({ lookAgain: 1 });
    const own = await classServing({ work: impatient });
    const { learner } = own;
    const net = answerAbout(netOfLamps(14), [], { id: 'net', learner: learner.person.id });
    const { results } = await learner.browser.call(apiRoutes.keepAnswers, { body: { answers: [net] } });
    expect(results).toMatchObject([{ result: 'kept' }]);
    const { answers } = await learner.browser.call(apiRoutes.answers);
    expect(answers).toMatchObject([{ correctedMark: { share: 0, correct: false } }]);
    await own.end();
    await impatient.close();
  });

  it('are never a fault, whatever they are', async () => {
    const { learner } = server;
    for (const [what, bodies] of Object.entries(hostileAnswers(learner.person.id))) {
      // Those that are waited for until they are given up are in the test above.
      if (what === 'flashers that are waited for') continue;
      const reply = await learner.browser.ask({
        ...keep,
        payload: bodies[0]!,
        headers: { 'content-type': 'application/json' },
      });
      expect({ what, told: [200, 400, 413].includes(reply.statusCode) }).toEqual({ what, told: true });
    }
  });

  it('are not even read where a body has more values than may be', async () => {
    const { learner } = server;
    for (const small of ['{}', '[]', '0']) {
      const body = `{"answers":[${Array.from({ length: 200_000 }, () => small).join()}]}`;
      const headers = { 'content-type': 'application/json' };
      const reply = await learner.browser.ask({ ...keep, payload: body, headers });
      expect(reply.json()).toMatchObject({
        code: 'body-too-large',
        message: expect.stringMatching(/more than (20000|150000) values/),
      });
    }
  });
});
