import { afterEach, describe, expect, it } from 'vitest';
import { apiRoutes, learnerExport } from '../../shared/api.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { ownBank } from '../support/own-bank.ts';
import { NOW, type Serving, serving } from './serving.ts';

let server: Serving;
afterEach(() => server.end());

describe('the bank', () => {
  it('is given whole, with a tag by which a browser need not fetch it again', async () => {
    server = await serving();
    const first = await server.ask({ url: '/api/bank' });
    expect(first.json()).toEqual(ownBank());
    expect(first.headers['cache-control']).toBe('no-cache');
    const tag = first.headers.etag!;
    for (const known of [tag, `"other", ${tag}`, tag.replace('W/', ''), '*']) {
      const again = await server.ask({ url: '/api/bank', headers: { 'if-none-match': known } });
      expect({ status: again.statusCode, body: again.body }).toEqual({ status: 304, body: '' });
    }
    expect((await server.ask({ url: '/api/bank', headers: { 'if-none-match': '"other"' } })).statusCode).toBe(
      200,
    );
  });

  it.each(['br', 'gzip'])('is sent compressed where %s is understood', async (encoding) => {
    server = await serving();
    const plain = await server.ask({ url: '/api/bank' });
    const small = await server.ask({ url: '/api/bank', headers: { 'accept-encoding': encoding } });
    expect(small.headers['content-encoding']).toBe(encoding);
    expect(small.rawPayload.length).toBeLessThan(plain.rawPayload.length / 3);
  });
});

describe('settings', () => {
  it('begin as not set, are kept, and give way to later ones', async () => {
    server = await serving();
    const none = await server.call(apiRoutes.settings);
    expect(none).toEqual({
      changedAt: 0,
      assessmentAt: null,
      minutesADay: null,
      newSkillsADay: null,
      placement: null,
    });
    const later = {
      ...none,
      changedAt: MORNING + 10,
      minutesADay: 20,
      placement: { at: MORNING, known: ['make'] },
    };
    expect(await server.call(apiRoutes.putSettings, { body: later })).toEqual(later);
    expect(
      await server.call(apiRoutes.putSettings, { body: { changedAt: MORNING, minutesADay: 5 } }),
    ).toEqual(later);
    expect(await server.call(apiRoutes.settings)).toEqual(later);
    const ahead = { ...later, changedAt: NOW + 1_000_000, minutesADay: 1 };
    expect(await server.call(apiRoutes.putSettings, { body: ahead })).toEqual({ ...ahead, changedAt: NOW });
  });

  it.each([
    '{"minutesADay":0}',
    '{"minutesADay":"ten"}',
    '{"bells":true}',
    '{"placement":{"at":1}}',
    '[]',
    'null',
    '"x"',
  ])('that are %s are refused', async (payload) => {
    server = await serving();
    const headers = { 'content-type': 'application/json' };
    await server.refused({ method: 'PUT', url: '/api/settings', payload, headers }, 'bad-value');
  });
});

describe('a learner', () => {
  it('is exported whole, as a file', async () => {
    server = await serving();
    const sent = Array.from({ length: 150 }, (_, at) => answerWith({ id: `a${at}`, at: MORNING + at }));
    await server.send(sent);
    const reply = await server.ask({ url: '/api/export' });
    expect(reply.headers['content-disposition']).toContain('attachment');
    const value = learnerExport.parse(reply.json());
    expect(value.answers.map(({ record }) => record)).toEqual(sent);
    expect(value.learner).toBe('me');
  });

  it('is erased only when it is confirmed, and then wholly', async () => {
    server = await serving();
    await server.send([answerWith({ id: 'one', at: MORNING })]);
    for (const url of ['/api/learner', '/api/learner?confirm=', '/api/learner?confirm=you'])
      await server.refused({ method: 'DELETE', url }, 'not-confirmed');
    expect(await server.call(apiRoutes.eraseLearner, { query: '?confirm=me' })).toEqual({ answers: 1 });
    expect(await server.call(apiRoutes.answers)).toEqual({ history: null, last: 0, answers: [] });
    expect(await server.call(apiRoutes.recalls)).toEqual({ history: null, last: 0, recalls: {} });
  });

  it('whose export fails before it begins is told so', async () => {
    server = await serving({
      wrap: (store) =>
        Object.assign(Object.create(store), {
          exportOf: () => ({
            [Symbol.asyncIterator]: () => ({
              next: () => Promise.reject(Object.assign(new Error('gone'), { code: 'ECONNREFUSED' })),
            }),
          }),
        }),
    });
    await server.refused({ url: '/api/export' }, 'store-unavailable');
  });
});

describe('the state of the server', () => {
  it('is alive and ready', async () => {
    server = await serving();
    expect(await server.call(apiRoutes.health)).toEqual({ status: 'alive', version: '0.0.0-test' });
    expect(await server.call(apiRoutes.ready)).toEqual({ status: 'ready' });
  });

  it('is alive and not ready while the store does not answer', async () => {
    server = await serving({
      wrap: (store) =>
        Object.assign(Object.create(store), {
          ping: () => Promise.reject(Object.assign(new Error('no'), { code: 'ECONNREFUSED' })),
        }),
    });
    await server.call(apiRoutes.health);
    await server.refused({ url: '/api/ready' }, 'store-unavailable');
  });
});
