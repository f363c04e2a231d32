import { afterEach, describe, expect, it } from 'vitest';
import { apiRoutes, MOST_ANSWERS } from '../../shared/api.ts';
import { mergeHistories, replay } from '../../src/memory/index.ts';
import { historyOf } from '../../src/practice/index.ts';
import { MOST_IN_ANSWER } from '../../src/server/check-answer.ts';
import { answerWith, DAY, MORNING } from '../support/answers.ts';
import { allAnswers, type Serving, serving } from './serving.ts';

let server: Serving;
afterEach(() => server.end());

const answers = (count: number, from = 0) =>
  Array.from({ length: count }, (_, at) =>
    answerWith({ id: `a${from + at}`, at: MORNING + (from + at) * 1000 }),
  );

describe('sending answers', () => {
  it('keeps each and gives them back page by page, in the order sent', async () => {
    server = await serving();
    const sent = answers(7);
    expect(await server.send(sent)).toEqual(
      sent.map(({ id }, at) => ({ result: 'kept', id, number: at + 1 })),
    );
    expect(await allAnswers(server, 3)).toEqual(sent);
    const page = await server.call(apiRoutes.answers, { query: '?after=5' });
    expect(page).toMatchObject({ last: 7, answers: [{ number: 6 }, { number: 7 }] });
  });

  it('counts each once however often it is sent', async () => {
    server = await serving();
    const sent = answers(3);
    await server.send(sent);
    expect(await server.send([...answers(1, 3), ...sent, ...answers(1, 3)])).toEqual([
      { result: 'kept', id: 'a3', number: 4 },
      { result: 'already', id: 'a0', number: 1 },
      { result: 'already', id: 'a1', number: 2 },
      { result: 'already', id: 'a2', number: 3 },
      { result: 'already', id: 'a3', number: 4 },
    ]);
    expect(await allAnswers(server)).toHaveLength(4);
  });

  it('counts each once when several requests with the same answers arrive together', async () => {
    server = await serving();
    const batches = Array.from({ length: 30 }, (_, at) => answers(5, at % 6));
    const results = (await Promise.all(batches.map((batch) => server.send(batch)))).flat();
    expect(results.filter(({ result }) => result === 'kept')).toHaveLength(10);
    const kept = await allAnswers(server);
    expect(kept.map(({ id }) => id).sort()).toEqual(answers(10).map(({ id }) => id));
    for (const { id, ...rest } of results)
      expect(rest).toMatchObject({ number: kept.findIndex((answer) => answer.id === id) + 1 });
  });

  it('refuses a bad answer by itself and keeps the others', async () => {
    server = await serving();
    const good = answers(2);
    const spoilt = (changes: object) => ({ ...answerWith({ id: 'bad', at: MORNING }), ...changes });
    const tooLong = 'x'.repeat(MOST_IN_ANSWER.letters);
    const results = await server.send([
      good[0],
      'nonsense',
      spoilt({ id: 7 }),
      spoilt({ at: -1 }),
      spoilt({ answer: { kind: 'meter', volts: 24 } }),
      spoilt({ attempt: { ...good[0]!.attempt, share: 0.25 } }),
      spoilt({ learner: 'somebody' }),
      spoilt({ id: 'nul\u0000' }),
      spoilt({ circuit: 'half \ud800' }),
      spoilt({ answer: { kind: 'lamp-states', states: { '-H1': tooLong } } }),
      spoilt({ mark: { parts: Array(MOST_IN_ANSWER.values).fill({}) } }),
      spoilt({ surprise: true }),
      good[1],
    ]);
    expect(
      results.map((result) => (result.result === 'refused' ? result.problem.code : result.result)),
    ).toEqual([
      'kept',
      ...['bad-answer', 'bad-answer', 'bad-answer', 'bad-answer', 'bad-answer'],
      'foreign-learner',
      ...['bad-answer', 'bad-answer'],
      ...['answer-too-large', 'answer-too-large'],
      'bad-answer',
      'kept',
    ]);
    expect(results[1]).toMatchObject({ id: null });
    expect(results[3]).toMatchObject({ id: 'bad', problem: { message: expect.stringContaining('At at:') } });
    expect(await allAnswers(server)).toEqual(good);
  });

  it('takes a full batch and no more', async () => {
    server = await serving();
    expect(await server.send(answers(MOST_ANSWERS))).toHaveLength(MOST_ANSWERS);
    const post = { method: 'POST', url: '/api/answers' } as const;
    await server.refused({ ...post, payload: { answers: answers(MOST_ANSWERS + 1) } }, 'bad-value');
    await server.refused({ ...post, payload: { answers: [] } }, 'bad-value');
    await server.refused({ ...post, payload: { answers: ['x'.repeat(5_000_000)] } }, 'body-too-large');
    const many = Array(100).fill({ mark: { parts: Array(4500).fill({}) } });
    await server.refused({ ...post, payload: { answers: many } }, 'body-too-large');
    expect(await allAnswers(server)).toHaveLength(MOST_ANSWERS);
  });

  it('acknowledges only what is on the disk: while keeping fails it says so, and afterwards nothing is lost or doubled', async () => {
    let failing = true;
    server = await serving({
      wrap: (store) =>
        Object.assign(Object.create(store), {
          keepAnswers: (records: never) =>
            failing
              ? Promise.reject(Object.assign(new Error('disk I/O error'), { code: 'SQLITE_IOERR_WRITE' }))
              : store.keepAnswers(records),
        }),
    });
    const sent = answers(3);
    const { message } = await server.refused(
      { method: 'POST', url: '/api/answers', payload: { answers: sent } },
      'store-unavailable',
    );
    expect(message).not.toContain('disk I/O error');
    failing = false;
    expect((await server.send(sent)).map(({ result }) => result)).toEqual(['kept', 'kept', 'kept']);
    expect(await allAnswers(server)).toEqual(sent);
  });

  it('keeps the others when one request has something that the database will not take', async () => {
    server = await serving({
      wrap: (store) =>
        Object.assign(Object.create(store), {
          keepAnswers: (records: readonly { id: string }[]) =>
            records.some(({ id }) => id === 'a1')
              ? Promise.reject(new Error('invalid byte sequence'))
              : store.keepAnswers(records as never),
        }),
    });
    const replies = await Promise.all(
      answers(4).map((answer) =>
        server.ask({ method: 'POST', url: '/api/answers', payload: { answers: [answer] } }),
      ),
    );
    expect(replies.map(({ statusCode }) => statusCode)).toEqual([200, 500, 200, 200]);
    expect(replies[1]!.json()).toMatchObject({ code: 'internal-fault' });
    expect(replies[1]!.body).not.toContain('byte sequence');
    expect((await allAnswers(server)).map(({ id }) => id).sort()).toEqual(['a0', 'a2', 'a3']);
  });

  it('merges two devices that were offline together into one memory', async () => {
    server = await serving();
    const phone = [0, 3, 8].map((day) => answerWith({ id: `p${day}`, at: MORNING + day * DAY }));
    const desk = [1, 2, 9].map((day) => answerWith({ id: `d${day}`, at: MORNING + day * DAY, share: 0.5 }));
    await Promise.all([server.send(phone.slice(0, 1)), server.send(desk)]);
    await server.send(phone);
    await server.send(desk);
    const history = historyOf([...phone, ...desk]);
    const { recalls } = await server.call(apiRoutes.recalls);
    expect(recalls).toEqual(Object.fromEntries(replay(mergeHistories([history]))));
    expect(await allAnswers(server)).toHaveLength(6);
  });

  it('takes answers of a device whose clock was set back', async () => {
    server = await serving();
    await server.send([answerWith({ id: 'ahead', at: MORNING + 5000 * DAY })]);
    await server.send([answerWith({ id: 'right', at: MORNING + DAY })]);
    expect((await allAnswers(server)).map(({ id }) => id)).toEqual(['ahead', 'right']);
    const { recalls } = await server.call(apiRoutes.recalls);
    expect(recalls['changeover']).toMatchObject({ reviews: 2 });
  });
});
