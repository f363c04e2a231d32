/** Who comes into a class and in which order classes and people are given, run over each database. */
import { describe, expect, it } from 'vitest';
import type { ClassDetail } from '../../shared/people.ts';
import { openStore, type Store } from '../../src/store/index.ts';
import type { WantedMember } from '../../src/store/people/take-roster.ts';
import { MORNING } from '../support/answers.ts';
import type { Database } from './store-contract.ts';

const HOUR = 3_600_000;

const asTutor = { asAdmin: false, look: false };
const asAdmin = { asAdmin: true, look: false };

export function classesContract(name: string, database: Pick<Database, 'fresh'>): void {
  describe(`classes in a store on ${name}`, () => {
    let now = MORNING;
    const inStore = async (use: (store: Store) => Promise<void>): Promise<void> => {
      now = MORNING;
      const store = await openStore(await database.fresh(), { now: () => now });
      try {
        await use(store);
      } finally {
        await store.close();
      }
    };
    const codeOf = ({ joiningCode }: ClassDetail): string => joiningCode.replace('-', '');
    const wanted = (name: string, more: Partial<WantedMember> = {}): WantedMember => ({
      id: null,
      name,
      signIn: null,
      manner: 'learner',
      ...more,
    });

    it('take from a roster who is meant already as they are, and make the others', () =>
      inStore(async ({ people: { classes, joining, persons } }) => {
        const { id } = await classes.make('Flour line', null, null);
        const [known, signedIn] = (await joining.byNames(id, ['Fern Ivy', 'Moss'])) as readonly {
          person: { id: string };
        }[];
        await persons.setPassword(signedIn!.person.id, 'hash', 'moss', null);
        const roster = [
          wanted('Fern I.', { id: known!.person.id }),
          wanted('Moss M.', { signIn: 'moss' }),
          wanted('Sedge', { signIn: 'sedge' }),
          wanted('Sedge'),
          wanted('Fern Ivy'),
        ];
        const taken = await joining.byRoster(id, roster, asTutor);
        expect(taken).toEqual({
          lines: [
            { name: 'Fern Ivy', manner: 'learner', result: 'already' },
            { name: 'Moss', manner: 'learner', result: 'already' },
            { name: 'Sedge', manner: 'learner', result: 'new' },
            // Each line means somebody of its own: another of the same name.
            { name: 'Sedge', manner: 'learner', result: 'new' },
            { name: 'Fern Ivy', manner: 'learner', result: 'new' },
          ],
          passedOver: [],
        });
        const members = (await classes.members(id)).map((one) => `${one.name} ${one.signIn}`);
        expect(members.sort()).toEqual([
          'Fern Ivy null',
          'Fern Ivy null',
          'Moss moss',
          'Sedge null',
          'Sedge sedge',
        ]);
        expect(await joining.byRoster(id, roster, asTutor)).toMatchObject({
          lines: Array(5).fill({ result: 'already' }),
        });
        expect(await joining.byRoster('unknown', roster, asTutor)).toBeNull();
      }));

    it('take by a roster of a tutor nobody from elsewhere and no tutors, which an administrator may', () =>
      inStore(async ({ people: { classes, joining, persons } }) => {
        const { id } = await classes.make('Ice works', null, null);
        const tutor = (await persons.make({ name: 'Tilda', role: 'tutor', signIn: 'tilda' }))!;
        const learner = (await persons.make({ name: 'Rue', role: 'learner', signIn: 'rue' }))!;
        const byId = (await persons.make({ name: 'Yarrow', role: 'learner' }))!;
        const roster = [
          wanted('Rue', { signIn: 'rue' }),
          wanted('Yarrow', { id: byId.id }),
          wanted('Tilda', { signIn: 'tilda', manner: 'tutor' }),
          wanted('Tom', { manner: 'tutor' }),
          wanted('Rúe'),
          wanted('R ue'),
        ];
        const rueAlike = { says: 'looksLike', name: 'R ue', other: 'Rue' };
        expect(await joining.byRoster(id, roster, asTutor)).toEqual({
          lines: [
            // Whoever has that id isn't told from anybody else.
            { name: 'Yarrow', manner: 'learner', result: 'new' },
            { name: 'Rúe', manner: 'learner', result: 'new' },
          ],
          passedOver: [
            { says: 'signInTaken', name: 'Rue', signIn: 'rue' },
            { says: 'signInTaken', name: 'Tilda', signIn: 'tilda' },
            { says: 'tutor', name: 'Tom' },
            rueAlike,
          ],
        });
        expect((await classes.members(id)).map((one) => one.id)).not.toContain(byId.id);

        const other = await classes.make('Ferry ramp', null, null);
        const again = [...roster, wanted('Rue again', { signIn: 'rue', manner: 'tutor' })];
        expect(await joining.byRoster(other.id, again, asAdmin)).toEqual({
          lines: [
            { name: 'Rue', manner: 'learner', result: 'joined' },
            { name: 'Yarrow', manner: 'learner', result: 'joined' },
            { name: 'Tilda', manner: 'tutor', result: 'joined' },
            { name: 'Tom', manner: 'tutor', result: 'new' },
            { name: 'Rúe', manner: 'learner', result: 'new' },
          ],
          passedOver: [rueAlike, { says: 'isLearner', name: 'Rue again' }],
        });
        const members = await classes.members(other.id);
        expect(members.map(({ id: one }) => one)).toEqual(
          expect.arrayContaining([tutor.id, learner.id, byId.id]),
        );
        expect(members.find(({ name: one }) => one === 'Tom')).toMatchObject({ role: 'tutor' });
      }));

    it('take all of a roster or nothing: when they are full, and when it is only looked at', () =>
      inStore(async ({ people: { classes, joining, persons } }) => {
        const { id } = await classes.make('Flour line', null, null);
        await joining.byNames(id, Array(998).fill('Fern'));
        const roster = [wanted('Moss'), wanted('Sedge', { signIn: 'sedge' })];
        const looked = await joining.byRoster(id, roster, { asAdmin: false, look: true });
        expect(looked).toMatchObject({ lines: [{ result: 'new' }, { result: 'new' }], passedOver: [] });
        expect(await joining.byRoster(id, [...roster, wanted('Rue')], asTutor)).toBe('class-full');
        expect((await classes.get(id))!.learners).toBe(998);
        expect(await persons.bySignIn('sedge')).toBeNull();
        expect(await joining.byRoster(id, Array(2001).fill(wanted('Fern')), asTutor)).toBe('class-full');
        expect(await joining.byRoster(id, roster, asTutor)).toEqual(looked);
        expect((await classes.get(id))!.learners).toBe(1000);
      }));

    it('let in by their code while they are open, under a name that nobody there can be taken for', () =>
      inStore(async ({ people: { classes, joining, persons } }) => {
        const made = await classes.make('Ice works', null, null);
        const code = codeOf(made);
        expect(await joining.asNew('WRONG', { name: 'Rue' })).toBe('code-refused');
        const rue = await joining.asNew(code, { name: 'Rue', signIn: 'rue' });
        expect(rue).toMatchObject({ name: 'Rue', role: 'learner' });
        expect(await joining.asNew(code, { name: 'Rue' })).toBe('name-alike');
        expect(await joining.asNew(code, { name: 'ruе' })).toBe('name-alike');
        expect(await joining.asNew(code, { name: 'Sedge', signIn: 'rue' })).toBe('name-taken');
        expect((await classes.get(made.id))!.learners).toBe(1);
        const known = (await persons.make({ name: 'R ue', role: 'learner' }))!;
        expect(await joining.asKnown(code, known.id)).toBe('name-alike');
        const other = (await persons.make({ name: 'Moss', role: 'tutor' }))!;
        expect(await joining.asKnown(code, other.id)).toBe('joined');
        // Once more: nobody can be taken for themselves, and they stay as they were.
        expect(await joining.asKnown(code, other.id)).toBe('joined');
        expect(await joining.byNames(made.id, ['Sedge', 'SEDGE'])).toBe('name-alike');
        expect((await classes.members(made.id)).map((one) => one.name)).toEqual(['Moss', 'Rue']);
        await classes.change(made.id, { joiningOpen: false });
        expect(await joining.look(code)).toBeNull();
        expect(await joining.asKnown(code, known.id)).toBe('code-refused');
        const renewed = (await classes.newCode(made.id))!;
        expect(renewed.joiningCode).not.toBe(made.joiningCode);
        await classes.change(made.id, { joiningOpen: true, title: 'Ice works 2', intake: 'Spring' });
        expect(await joining.look(codeOf(renewed))).toBe('Ice works 2');
        expect(await joining.look(code)).toBeNull();
        expect(await classes.newCode('unknown')).toBeNull();
        expect(await classes.change('unknown', { title: 'None' })).toBeNull();
        expect(await classes.get(made.id)).toMatchObject({ intake: 'Spring', endedAt: null });
      }));

    it('are given with those that go on first, each by title as people count, and so are somebody’s', () =>
      inStore(async ({ people: { classes, persons } }) => {
        const tutor = (await persons.make({ name: 'Tom', role: 'tutor' }))!;
        const ids: string[] = [];
        for (const title of ['Line 10', 'Line 9', 'Line 10', 'Ended', 'A last one'])
          ids.push((await classes.make(title, null, tutor.id)).id);
        await classes.change(ids[3]!, { ended: true });
        const [ten, , otherTen] = ids;
        const tens = [ten!, otherTen!].sort();
        const listed = await classes.list(null);
        expect(listed.map(({ title }) => title)).toEqual([
          'A last one',
          'Line 9',
          'Line 10',
          'Line 10',
          'Ended',
        ]);
        expect(listed.slice(2, 4).map(({ id }) => id)).toEqual(tens);
        expect(await classes.list(tutor.id)).toEqual(listed);
        expect((await classes.of(tutor.id)).map(({ title }) => title)).toEqual([
          'A last one',
          'Ended',
          'Line 9',
          'Line 10',
          'Line 10',
        ]);
        expect((await classes.of(tutor.id)).slice(3).map(({ id }) => id)).toEqual(tens);
        await classes.change(ids[3]!, { ended: false });
        expect((await classes.list(null)).map(({ title }) => title)[1]).toBe('Ended');
      }));

    it('give their members by name, and everybody by part of a name, with signs that mean nothing else there', () =>
      inStore(async ({ people: { classes, joining, persons } }) => {
        const { id } = await classes.make('Flour line', null, null);
        await joining.byNames(id, ['Zoe', 'Learner 10', 'Learner 9', 'Learner 9']);
        const members = await classes.members(id);
        expect(members.map((one) => one.name)).toEqual(['Learner 9', 'Learner 9', 'Learner 10', 'Zoe']);
        expect(members[0]!.id < members[1]!.id).toBe(true);
        for (const [one, signIn] of [
          ['100 % Ann', 'ann_b'],
          ['Back\\slash', 'annxb'],
        ] as const)
          await persons.make({ name: one, role: 'learner', signIn });
        const found = async (text: string) => (await persons.find(text, 0, 9)).people.map((one) => one.name);
        expect(await found('%')).toEqual(['100 % Ann']);
        expect(await found('N_B')).toEqual(['100 % Ann']);
        expect(await found('\\')).toEqual(['Back\\slash']);
        expect(await found('LEARNER')).toEqual(['Learner 10', 'Learner 9', 'Learner 9']);
        const page = await persons.find('learner', 1, 1);
        expect([page.total, page.people.map((one) => one.name)]).toEqual([3, ['Learner 9']]);
        const [zoe] = (await persons.find('zoe', 0, 9)).people;
        expect(await persons.rename(zoe!.id, 'Zoë')).toMatchObject({ id: zoe!.id, name: 'Zoë' });
        expect(await persons.byId(zoe!.id)).toMatchObject({ name: 'Zoë' });
        expect(await persons.rename('unknown', 'Nobody')).toBeNull();
      }));

    it('lose a tutor who may teach no more, and nobody else', () =>
      inStore(async ({ people: { classes, persons, sessions } }) => {
        const taken = (await persons.make({ name: 'Tom', role: 'tutor', signIn: 'tom' }))!;
        expect(await persons.makeFirstAdmin({ name: 'Ada', signIn: 'tom' })).toBe('name-taken');
        expect(await persons.makeFirstAdmin({ name: 'Ada', signIn: 'ada' })).toMatchObject({ role: 'admin' });
        const { id } = await classes.make('Ice works', null, taken.id);
        const token = await sessions.begin(taken.id, 'a browser');
        expect(await persons.changeRole(taken.id, 'admin')).toMatchObject({ role: 'admin' });
        expect(await sessions.holderOf(token)).toBeNull();
        expect(await classes.mannerOf(id, taken.id)).toBe('tutor');
        // One of two administrators may stop being one, whichever of them; somebody who is none is never the last.
        const [ada] = (await persons.find('ada', 0, 1)).people;
        expect(await persons.changeRole(ada!.id, 'tutor')).toMatchObject({ role: 'tutor' });
        expect(await persons.changeRole(taken.id, 'tutor')).toBe('last-admin');
        expect(await persons.changeRole(ada!.id, 'admin')).toMatchObject({ role: 'admin' });
        expect(await persons.changeRole(taken.id, 'learner')).toMatchObject({ role: 'learner' });
        expect(await classes.mannerOf(id, taken.id)).toBeNull();
        expect(await persons.changeRole(taken.id, 'tutor')).toMatchObject({ role: 'tutor' });
      }));

    it('make whoever tries wrongly wait, longer each time, and nobody else', () =>
      inStore(async ({ people: { throttles } }) => {
        const take = () => throttles.take('sign-in|fern');
        // Five slips cost nothing; the wait then doubles, up to a quarter of an hour.
        for (let free = 0; free < 5; free++) expect(await take()).toBeNull();
        const waits: number[] = [];
        for (let wrong = 0; wrong < 12; wrong++) {
          const wait = await take();
          if (wait === null) continue;
          waits.push(wait);
          now += wait * 1000 - 1;
          expect(await take()).toBe(1);
          now += 1;
          expect(await take()).toBeNull();
        }
        expect(waits).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900]);
        expect(await throttles.take('sign-in|moss')).toBeNull();
        await throttles.right('sign-in|fern');
        for (let free = 0; free < 5; free++) expect(await take()).toBeNull();
      }));

    it('count a try that was neither right nor wrong as none, and make some wait before the first', () =>
      inStore(async ({ people: { throttles } }) => {
        const take = () => throttles.take('sign-in|fern');
        for (let tried = 0; tried < 20; tried++) {
          expect(await take()).toBeNull();
          await throttles.giveBack('sign-in|fern');
        }
        expect(await throttles.take('code|moss', 3)).toBe(3);
        now += 2001;
        expect(await throttles.take('code|moss', 3)).toBe(1);
        now += 1000;
        expect(await throttles.take('code|moss', 3)).toBeNull();
      }));

    it('forget the tries of yesterday, and one guess alone after an hour', () =>
      inStore(async ({ people: { throttles } }) => {
        const taken = async (what: string, times: number): Promise<void> => {
          for (let tried = 0; tried < times; tried++) await throttles.take(what);
        };
        await taken('often', 7);
        await taken('once', 1);
        now += HOUR;
        // Somebody new takes the old ones out; not what is but an hour old.
        await taken('new', 1);
        await taken('once', 4);
        expect(await throttles.take('once')).toBe(1);
        await taken('one guess', 1);
        now += HOUR + 1;
        await taken('newer', 1);
        await taken('one guess', 5);
        expect(await throttles.take('one guess')).toBe(1);
        expect(await throttles.take('once')).toBeNull();
        expect(await throttles.take('once')).toBe(2);
        now += 22 * HOUR + 1000;
        await taken('another', 1);
        await taken('often', 5);
        expect(await throttles.take('often')).toBe(1);
      }));
  });
}
