/** Somebody is erased while what they have sent is still on its way: nothing of theirs comes back. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { changeSettings } from '../../src/memory/index.ts';
import { NoSuchPerson, openPostgresStore, openSqliteStore, type Store } from '../../src/store/index.ts';
import { type ClassServing, classServing, requestFor } from '../server/class-serving.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';

/** What was begun before the person was erased, and comes to the store only afterwards. */
function late(store: Store, erased: Promise<void>, onReached: (what: string) => void): Store {
  const after =
    <A extends readonly unknown[], R>(what: string, work: (...words: A) => Promise<R>) =>
    async (...words: A): Promise<R> => {
      onReached(what);
      await erased;
      return work(...words);
    };
  const held: Partial<Store> = {
    keepAnswers: after('answers', store.keepAnswers.bind(store)),
    putSettings: after('settings', store.putSettings.bind(store)),
  };
  return new Proxy(store, {
    get: (own, name) => {
      const value = Reflect.get(held, name) ?? Reflect.get(own, name);
      return typeof value === 'function' ? value.bind(own) : value;
    },
  });
}

describe('what somebody sent who is erased meanwhile', () => {
  let server: ClassServing;
  let whenErased = (): void => undefined;
  const erased = new Promise<void>((resolve) => {
    whenErased = resolve;
  });
  const reached = new Set<string>();
  let whenReached = (): void => undefined;
  const allReached = new Promise<void>((resolve) => {
    whenReached = resolve;
  });
  const onReached = (what: string): void => {
    reached.add(what);
    if (reached.size === 2) whenReached();
  };
  beforeAll(async () => {
    server = await classServing({ wrap: (store) => late(store, erased, onReached) });
  });
  afterAll(() => server.end());

  it('is not kept, neither answers nor settings, and the sender is told to sign in', async () => {
    const { learner, otherLearner } = server;
    const { id } = learner.person;
    const sent = Array.from({ length: 40 }, (_, at) =>
      learner.browser.ask({
        ...requestFor(apiRoutes.keepAnswers, {}),
        payload: { answers: [answerWith({ id: `a${at}`, at: MORNING, learner: id })] },
      }),
    );
    const beside = otherLearner.browser.ask({
      ...requestFor(apiRoutes.keepAnswers, {}),
      payload: { answers: [answerWith({ id: 'b', at: MORNING, learner: otherLearner.person.id })] },
    });
    const set = learner.browser.ask({
      ...requestFor(apiRoutes.putSettings, {}),
      payload: { changedAt: MORNING, minutesADay: 5 },
    });
    await allReached;
    await server.store.erase(id);
    whenErased();
    for (const reply of await Promise.all([...sent, set]))
      expect(reply.json()).toMatchObject({ code: 'sign-in-first' });
    expect((await beside).statusCode).toBe(200);
    expect((await server.store.learners()).map(({ learner: each }) => each)).toEqual([
      otherLearner.person.id,
    ]);
    expect(await server.store.check()).toEqual([]);
  });
});

function onBoth(name: string, fresh: () => Promise<Store>): void {
  describe(`a store in ${name}`, () => {
    it('keeps nothing of a person who is not there, whatever else comes with it, and finds what is', async () => {
      const store = await fresh();
      const { persons } = store.people;
      const [fern, moss] = [
        (await persons.make({ name: 'Fern', role: 'learner' }))!,
        (await persons.make({ name: 'Moss', role: 'learner' }))!,
      ];
      const of = (learner: string, id: string) => answerWith({ id, at: MORNING, learner });
      await store.keepAnswers([of(fern.id, 'f1'), of(moss.id, 'm1')], new Map(), new Map(), 'person');
      await store.erase(fern.id);
      await expect(
        store.keepAnswers([of(fern.id, 'f2'), of(moss.id, 'm2')], new Map(), new Map(), 'person'),
      ).rejects.toThrow(NoSuchPerson);
      const none = await store.settingsOf(fern.id);
      const wanted = changeSettings(none, { minutesADay: 5 }, MORNING);
      await expect(store.putSettings(fern.id, wanted, 'person')).rejects.toThrow(NoSuchPerson);
      expect(await store.learners()).toEqual([{ learner: moss.id, answers: 1 }]);
      expect(await store.check()).toEqual([]);

      // As it could come about before people were held to.
      await store.keepAnswers([of(fern.id, 'f3')]);
      expect(await store.check()).toEqual([{ learner: fern.id, fault: { says: 'noSuchPerson' } }]);
      await store.erase(fern.id);
      expect(await store.check()).toEqual([]);
      await store.close();
    });

    it('erases a person and what they send at the same moment, whichever comes first', async () => {
      const store = await fresh();
      const { persons } = store.people;
      for (let times = 0; times < 20; times++) {
        const { id } = (await persons.make({ name: 'Fern', role: 'learner' }))!;
        const record = answerWith({ id: 'f', at: MORNING, learner: id });
        const sending = Array.from({ length: 5 }, (_, at) =>
          store
            .keepAnswers([{ ...record, id: `f${at}` }], new Map(), new Map(), 'person')
            .then(() => 'kept')
            .catch((error: unknown) => {
              if (error instanceof NoSuchPerson) return 'refused';
              throw error;
            }),
        );
        await Promise.all([store.erase(id), ...sending]);
        expect(await store.answersOf(id)).toEqual([]);
      }
      expect(await store.learners()).toEqual([]);
      expect(await store.check()).toEqual([]);
      await store.close();
    });
  });
}

describe('on both databases', () => {
  let postgres: TestPostgres;
  beforeAll(async () => {
    postgres = await startPostgres();
  });
  afterAll(() => postgres?.stop());
  onBoth('SQLite', () => openSqliteStore(':memory:'));
  onBoth('PostgreSQL', async () => openPostgresStore(await postgres.fresh()));
});
