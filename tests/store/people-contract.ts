/** What the store does for people, run over each database. */

import { describe, expect, it } from 'vitest';
import { learnerExport } from '../../shared/api.ts';
import { LINK_LASTS, openStore, SESSION_LASTS, type Store } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import type { Database } from './store-contract.ts';

const MINUTE = 60_000;

export interface PeopleDatabase extends Pick<Database, 'fresh'> {
  /**
   * Whether one process can have it open several times as several programs would. SQLite waits without letting anybody
   * else go on, so there many ask the one that is open.
   */
  readonly severally: boolean;
}

export function peopleContract(name: string, database: PeopleDatabase): void {
  describe(`people in a store on ${name}`, () => {
    let now = MORNING;
    /** One store, or several opened on the same place. */
    const inStores = async (
      count: number,
      use: (stores: readonly Store[]) => Promise<void>,
    ): Promise<void> => {
      now = MORNING - (MORNING % (60 * MINUTE));
      const place = await database.fresh();
      const opened: Store[] = [];
      for (let at = 0; at < (database.severally ? count : 1); at++)
        opened.push(await openStore(place, { now: () => now }));
      try {
        await use(Array.from({ length: count }, (_, at) => opened[at % opened.length]!));
      } finally {
        for (const store of opened) await store.close();
      }
    };
    const inStore = (use: (store: Store) => Promise<void>) => inStores(1, ([store]) => use(store!));
    const learner = (store: Store, signIn: string | null = null) =>
      store.people.persons.make({ name: 'Fern', role: 'learner', signIn });

    it('signs in one person by a name, whichever program makes them', () =>
      inStores(2, async (stores) => {
        const made = await Promise.all(
          Array.from({ length: 10 }, (_, at) => learner(stores[at % 2]!, 'fern')),
        );
        expect(made.filter((one) => one !== null)).toHaveLength(1);
        const [nobody, other] = await Promise.all([learner(stores[0]!), learner(stores[1]!)]);
        expect(nobody!.id).not.toBe(other!.id);
        const { persons } = stores[0]!.people;
        expect(await persons.setPassword(other!.id, 'hash', 'fern', null)).toBe(false);
        expect(await persons.bySignIn('fern')).toMatchObject({ passwordHash: null });
        expect(await persons.setPassword(other!.id, 'hash', 'moss', null)).toBe(true);
        expect(await persons.bySignIn('moss')).toMatchObject({
          passwordHash: 'hash',
          person: { hasPassword: true },
        });
      }));

    it('has one secret and one first administrator, whichever program begins', () =>
      inStores(3, async (stores) => {
        const secrets = await Promise.all(stores.map(({ people }) => people.installation.secret()));
        expect(secrets[0]).toHaveLength(32);
        expect(new Set(secrets.map((secret) => secret.toString('hex'))).size).toBe(1);
        const admins = await Promise.all(
          stores.map(({ people }, at) => people.persons.makeFirstAdmin({ name: 'Ada', signIn: `ada${at}` })),
        );
        expect(admins.filter((made) => made === 'too-late')).toHaveLength(2);
      }));

    it('never loses the last administrator', () =>
      inStores(2, async (stores) => {
        const { persons } = stores[0]!.people;
        const ids: string[] = [];
        for (const name of ['Ada', 'Ben']) ids.push((await persons.make({ name, role: 'admin' }))!.id);
        const results = await Promise.all(
          stores.map(({ people }, at) => people.persons.changeRole(ids[at]!, 'learner')),
        );
        expect(results.filter((result) => result === 'last-admin')).toHaveLength(1);
        expect(await persons.hasAdmin()).toBe(true);
        expect(await persons.changeRole('unknown', 'tutor')).toBeNull();
      }));

    it('ends a session at once for every program, and by itself after thirty days without use', () =>
      inStores(2, async ([one, other]) => {
        const { id } = (await learner(one!))!;
        const token = await one!.people.sessions.begin(id, 'a browser');
        const holder = await other!.people.sessions.holderOf(token);
        expect(holder).toMatchObject({ person: id, role: 'learner' });
        now += SESSION_LASTS - 1;
        expect(await other!.people.sessions.holderOf(token)).not.toBeNull();
        now += SESSION_LASTS - 1;
        expect(await one!.people.sessions.list(id)).toMatchObject([
          { id: holder!.session, device: 'a browser' },
        ]);
        expect(await one!.people.sessions.end(id, holder!.session)).toBe(true);
        expect(await one!.people.sessions.end(id, holder!.session)).toBe(false);
        expect(await other!.people.sessions.holderOf(token)).toBeNull();
        const second = await one!.people.sessions.begin(id, 'a browser');
        now += SESSION_LASTS;
        expect(await other!.people.sessions.holderOf(second)).toBeNull();
        expect(await other!.people.sessions.holderOf('nothing')).toBeNull();
      }));

    it('lets a link be used once, by whichever program is asked first', () =>
      inStores(2, async (stores) => {
        const { people } = stores[0]!;
        const { id } = (await learner(stores[0]!, 'fern'))!;
        await people.persons.setPassword(id, 'hash', null, null);
        const before = await people.sessions.begin(id, 'before');
        const first = await people.links.make(id);
        const { token, until } = await people.links.make(id);
        expect(until).toBe(now + LINK_LASTS);
        expect(await people.links.use(first.token, 'replaced')).toBeNull();
        const used = await Promise.all(
          Array.from({ length: 10 }, (_, at) => stores[at % 2]!.people.links.use(token, 'a browser')),
        );
        const begun = used.filter((session) => session !== null);
        expect(begun).toHaveLength(1);
        expect(await people.sessions.holderOf(begun[0]!)).toMatchObject({ person: id });
        expect(await people.sessions.holderOf(before)).toBeNull();
        expect(await people.persons.passwordHashOf(id)).toBeNull();
      }));

    it('counts tries of all programs together, and forgets them when their time is over', () =>
      inStores(2, async (stores) => {
        const limit = { what: 'sign-in|account|fern', most: 10, within: 10 * MINUTE };
        now += 4 * MINUTE;
        const waits = () => stores[0]!.people.tries.wait(limit);
        const take = (times: number) =>
          Promise.all(
            Array.from({ length: times }, (_, at) => stores[at % stores.length]!.people.tries.take(limit)),
          );
        expect(await waits()).toBeNull();
        await take(9);
        expect(await waits()).toBeNull();
        await take(21);
        // Until the ten minutes are over in which they were counted.
        expect(await waits()).toBe(360);
        now += 6 * MINUTE - 1;
        expect(await waits()).toBe(1);
        expect(await stores[0]!.people.tries.wait({ ...limit, what: 'sign-in|account|moss' })).toBeNull();
        now += 1;
        expect(await waits()).toBeNull();
        await take(10);
        expect(await waits()).toBe(600);
      }));

    it('never makes a class more than full, also when many join at once', () =>
      inStores(2, async (stores) => {
        const { classes, joining } = stores[0]!.people;
        const made = await classes.make('Flour line', null, null);
        const code = made.joiningCode.replace('-', '');
        expect(await joining.look(code)).toBe('Flour line');
        const added = await joining.byNames(made.id, Array(400).fill('Fern'));
        expect(added).toHaveLength(400);
        await joining.byNames(made.id, Array(400).fill('Fern'));
        await joining.byNames(made.id, Array(196).fill('Fern'));
        const results = await Promise.all(
          Array.from({ length: 8 }, (_, at) =>
            stores[at % 2]!.people.joining.asNew(code, { name: `Moss ${at}`, signIn: `moss${at}` }),
          ),
        );
        expect(results.filter((result) => result === 'class-full')).toHaveLength(4);
        expect((await classes.get(made.id))!.learners).toBe(1000);
        expect((await stores[0]!.people.persons.find('moss', 0, 10)).total).toBe(4);
        expect(await joining.byNames(made.id, ['One more'])).toBe('class-full');
        expect(await joining.byNames('unknown', ['One'])).toBeNull();
      }));

    it('tells a tutor’s learners from others', () =>
      inStore(async ({ people: { classes, persons, joining } }) => {
        const [tutor, other] = await Promise.all(
          ['Tom', 'Tilda'].map((name) => persons.make({ name, role: 'tutor' })),
        );
        const own = await classes.make('Own', 'Autumn', tutor!.id);
        await classes.make('Other', null, other!.id);
        await joining.byNames(own.id, ['Fern']);
        const fern = (await classes.members(own.id)).find(({ name }) => name === 'Fern')!;
        expect(await classes.teaches(tutor!.id, fern.id)).toBe(true);
        expect(await classes.teaches(other!.id, fern.id)).toBe(false);
        expect((await classes.list(tutor!.id)).map(({ title }) => title)).toEqual(['Own']);
        expect((await classes.list(null)).map(({ title, learners }) => [title, learners])).toEqual([
          ['Other', 0],
          ['Own', 1],
        ]);
        expect(await classes.of(fern.id)).toEqual([{ id: own.id, title: 'Own', manner: 'learner' }]);
        await classes.addTutor(own.id, other!.id);
        expect(await classes.mannerOf(own.id, other!.id)).toBe('tutor');
        expect(await classes.mannerOf(own.id, 'nobody')).toBeNull();
        // Tutors teach learners, and neither one another nor the other way round.
        expect(await classes.teaches(other!.id, fern.id)).toBe(true);
        expect(await classes.teaches(tutor!.id, other!.id)).toBe(false);
        expect(await classes.teaches(fern.id, tutor!.id)).toBe(false);
        expect(await classes.teaches(fern.id, fern.id)).toBe(false);
        expect(await classes.remove(own.id, other!.id, 'learner')).toBe(false);
        expect(await classes.remove(own.id, other!.id, 'tutor')).toBe(true);
        const changed = await classes.change(own.id, { intake: null, ended: true });
        expect(changed).toMatchObject({ title: 'Own', intake: null, endedAt: now, joiningOpen: true });
        expect(await joining.look(own.joiningCode.replace('-', ''))).toBeNull();
      }));

    it('erases a person with everything of theirs and nothing of others, and a class without its people', () =>
      inStore(async (store) => {
        const { classes, joining, persons, sessions, links } = store.people;
        const made = await classes.make('Flour line', null, null);
        await joining.byNames(made.id, ['Fern', 'Moss']);
        const [fern, moss] = (await classes.members(made.id)).map(({ id }) => id);
        for (const id of [fern!, moss!]) {
          await sessions.begin(id, 'a browser');
          await store.keepAnswer(answerWith({ id: 'one', at: MORNING, learner: id }));
        }
        let text = '';
        for await (const piece of store.exportOf(fern!, english)) text += piece;
        expect(learnerExport.parse(JSON.parse(text)).person).toEqual({
          name: 'Fern',
          role: 'learner',
          signIn: null,
          createdAt: now,
          classes: [{ title: 'Flour line', manner: 'learner', joinedAt: now }],
          sessions: [{ device: 'a browser', begunAt: now, seenAt: now }],
          linkUntil: now + LINK_LASTS,
        });
        expect(await store.erasePractice(moss!)).toEqual({ answers: 1 });
        expect(await persons.byId(moss!)).not.toBeNull();
        expect(await store.erase(fern!)).toEqual({ answers: 1 });
        expect(await persons.byId(fern!)).toBeNull();
        expect(await sessions.list(fern!)).toEqual([]);
        expect((await classes.members(made.id)).map(({ id }) => id)).toEqual([moss]);
        await expect(links.make(fern!)).rejects.toThrow();
        await store.eraseClass(made.id);
        expect(await classes.get(made.id)).toBeNull();
        expect(await classes.of(moss!)).toEqual([]);
        expect(await persons.byId(moss!)).not.toBeNull();
        expect(await store.check()).toEqual([]);
      }));

    it('lets nobody in by what a backup that was put back still has', () =>
      inStore(async (store) => {
        const { id } = (await learner(store))!;
        const session = await store.people.sessions.begin(id, 'a browser');
        const link = await store.people.links.make(id);
        await store.renameHistories();
        expect(await store.people.sessions.holderOf(session)).toBeNull();
        expect(await store.people.links.use(link.token, 'a browser')).toBeNull();
        expect(await store.people.persons.byId(id)).not.toBeNull();
      }));
  });
}
