/** Classes: joining them, looking after them, and who may. */
import { afterEach, describe, expect, it } from 'vitest';
import { apiRoutes, learnerExport } from '../../shared/api.ts';
import { peopleRoutes } from '../../shared/api-people.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { Browser, type ClassServing, classServing, PASSWORD, requestFor } from './class-serving.ts';

let server: ClassServing;
afterEach(() => server.end());
const started = async (): Promise<ClassServing> => {
  server = await classServing();
  return server;
};
const account = { name: 'Nora New', signIn: 'nora', password: PASSWORD };

describe('joining by code', () => {
  it('takes the code as somebody types it from a slip', async () => {
    const { nobody, ownClass } = await started();
    const code = ownClass.joiningCode
      .toLowerCase()
      .replace('-', ' ')
      .replaceAll('0', 'O')
      .replaceAll('1', 'l');
    expect(await nobody.call(peopleRoutes.lookAtCode, { body: { code } })).toEqual({ title: 'Flour line' });
    expect(await nobody.call(peopleRoutes.join, { body: { ...account, code } })).toMatchObject({
      person: { name: 'Nora New', role: 'learner', classes: [{ title: 'Flour line', manner: 'learner' }] },
    });
    expect(await nobody.call(apiRoutes.answers)).toMatchObject({ last: 0 });
  });

  it('is refused with a code of no class, of one that is closed or has ended, and with a name that is taken', async () => {
    const { nobody, ownClass, tutor } = await started();
    const code = ownClass.joiningCode;
    const join = (body: object) => nobody.refusedBy(peopleRoutes.join, { body: { ...account, ...body } });
    const change = (body: object) =>
      tutor.browser.call(peopleRoutes.changeClass, { params: { class: ownClass.id }, body });
    expect(await join({ code: '0000-0000' })).toBe('code-refused');
    expect(await join({ code: 'no code' })).toBe('bad-value');
    expect(await join({ code, signIn: 'lars.learner' })).toBe('name-taken');
    await change({ joiningOpen: false });
    expect(await join({ code })).toBe('code-refused');
    await change({ joiningOpen: true, ended: true });
    expect(await join({ code })).toBe('code-refused');
    await change({ ended: false });
    const { joiningCode } = await tutor.browser.call(peopleRoutes.newCode, {
      params: { class: ownClass.id },
    });
    expect(await join({ code })).toBe('code-refused');
    expect((await server.store.people.persons.find('nora', 0, 9)).total).toBe(0);
    await nobody.call(peopleRoutes.join, { body: { ...account, code: joiningCode } });
  });

  it('takes who has signed in into one more class, and leaves a tutor a tutor', async () => {
    const { learner, tutor, ownClass, otherClass } = await started();
    const body = { code: otherClass.joiningCode };
    const { person } = await learner.browser.call(peopleRoutes.joinClass, { body });
    expect(person!.classes.map(({ title }) => title)).toEqual(['Flour line', 'Ice works']);
    await tutor.browser.call(peopleRoutes.joinClass, { body: { code: ownClass.joiningCode } });
    const detail = await tutor.browser.call(peopleRoutes.class, { params: { class: ownClass.id } });
    expect(detail.members.map(({ name, manner }) => `${name}: ${manner}`)).toEqual([
      'Lea Learner: learner',
      'Tom Tutor: tutor',
    ]);
  });

  it('leaves nobody behind when two choose the same name at once', async () => {
    const { ownClass } = await started();
    const body = { ...account, code: ownClass.joiningCode };
    const replies = await Promise.all(
      Array.from({ length: 5 }, () =>
        new Browser(server).ask({ method: 'POST', url: '/api/join', payload: body }),
      ),
    );
    expect(replies.map(({ statusCode }) => statusCode).sort()).toEqual([200, 409, 409, 409, 409]);
    expect((await server.store.people.classes.get(ownClass.id))!.learners).toBe(2);
  });
});

describe('a tutor', () => {
  it('makes classes and learners with links, renames them and takes them out', async () => {
    const { tutor } = await started();
    const made = await tutor.browser.call(peopleRoutes.newClass, { body: { title: ' Ferry ramp ' } });
    expect(made).toMatchObject({
      title: 'Ferry ramp',
      intake: null,
      learners: 0,
      joiningOpen: true,
      endedAt: null,
    });
    expect(made.members).toMatchObject([{ name: 'Tom Tutor', manner: 'tutor' }]);
    const params = { class: made.id };
    const names = ['Bea Ten', 'Ben Two', 'Ben Two'];
    const { people } = await tutor.browser.call(peopleRoutes.addLearners, { params, body: { names } });
    expect(new Set(people.map(({ link }) => link.address)).size).toBe(3);
    const one = { class: made.id, person: people[0]!.person.id };
    await tutor.browser.call(peopleRoutes.renamePerson, { params: one, body: { name: 'Bea Eleven' } });
    const after = await tutor.browser.call(peopleRoutes.removeMember, {
      params: { ...one, person: people[1]!.person.id },
    });
    expect(after.members.map(({ name }) => name)).toEqual(['Bea Eleven', 'Ben Two', 'Tom Tutor']);
    const { classes } = await tutor.browser.call(peopleRoutes.classes);
    expect(classes.map(({ title, learners }) => [title, learners])).toEqual([
      ['Ferry ramp', 2],
      ['Flour line', 1],
    ]);
  });

  it.each(['', ' ', 'two\nlines', 'nul\u0000', 'half \ud800', 'turned \u202e round', 'x'.repeat(81)])(
    'can not give the name %j',
    async (name) => {
      const { tutor, ownClass } = await started();
      const given = { params: { class: ownClass.id }, body: { names: [name] } };
      expect(await tutor.browser.refusedBy(peopleRoutes.addLearners, given)).toBe('bad-value');
    },
  );

  it('can not get at an administrator or a tutor who learns in the class', async () => {
    const { tutor, admin, otherTutor, ownClass } = await started();
    for (const { browser, person } of [admin, otherTutor]) {
      await browser.call(peopleRoutes.joinClass, { body: { code: ownClass.joiningCode } });
      const params = { person: person.id };
      expect(await tutor.browser.refusedBy(peopleRoutes.newLink, { params })).toBe('no-such-thing');
      expect(await tutor.browser.refusedBy(peopleRoutes.endSessionsOf, { params })).toBe('no-such-thing');
      const rename = { params, body: { name: 'Another' } };
      expect(await tutor.browser.refusedBy(peopleRoutes.renamePerson, rename)).toBe('no-such-thing');
    }
  });

  it('has no way to somebody who has left the class', async () => {
    const { tutor, learner, ownClass } = await started();
    const params = { class: ownClass.id, person: learner.person.id };
    await tutor.browser.call(peopleRoutes.removeMember, { params });
    expect(await tutor.browser.refusedBy(peopleRoutes.newLink, { params })).toBe('no-such-thing');
  });
});

describe('an administrator', () => {
  it('finds everybody, page by page and by part of a name', async () => {
    const { admin } = await started();
    const all = await admin.browser.call(peopleRoutes.people);
    expect(all.total).toBe(5);
    const page = await admin.browser.call(peopleRoutes.people, { query: '?from=1&limit=2' });
    expect(page.people).toEqual(all.people.slice(1, 3));
    const names = async (query: string) =>
      (await admin.browser.call(peopleRoutes.people, { query })).people.map(({ name }) => name);
    expect(await names('?find=TUTOR')).toEqual(['Tilda Tutor', 'Tom Tutor']);
    expect(await names('?find=lars.l')).toEqual(['Lars Learner']);
    expect(await names('?find=%25')).toEqual([]);
    expect(await names('?find=_')).toEqual([]);
    expect(await names(`?find=${encodeURIComponent("' or 1=1 --")}`)).toEqual([]);
  });

  it('stays one when they are asked to go, and two who erase each other leave one', async () => {
    const { admin, somebody } = await started();
    const self = { params: { person: admin.person.id } };
    const demote = { ...self, body: { role: 'tutor' } };
    expect(await admin.browser.refusedBy(peopleRoutes.changeRole, demote)).toBe('last-admin');
    const erase = { ...self, query: `?confirm=${admin.person.id}` };
    expect(await admin.browser.refusedBy(peopleRoutes.erasePerson, erase)).toBe('last-admin');
    const second = await somebody('Second Office', 'admin');
    await Promise.all([
      second.browser.ask(requestFor(peopleRoutes.erasePerson, self.params, erase.query)),
      admin.browser.ask(
        requestFor(peopleRoutes.erasePerson, { person: second.person.id }, `?confirm=${second.person.id}`),
      ),
    ]);
    expect(await server.store.people.persons.hasAdmin()).toBe(true);
  });

  it('makes tutors, and who no longer is one is tutor of no class', async () => {
    const { admin, learner, otherTutor, ownClass } = await started();
    const add = (person: string) => ({ params: { class: ownClass.id }, body: { person } });
    expect(await admin.browser.refusedBy(peopleRoutes.addTutor, add(learner.person.id))).toBe(
      'no-such-thing',
    );
    await admin.browser.call(peopleRoutes.addTutor, add(otherTutor.person.id));
    await otherTutor.browser.call(peopleRoutes.class, { params: { class: ownClass.id } });
    const { person } = otherTutor;
    const params = { class: ownClass.id, person: person.id };
    await admin.browser.call(peopleRoutes.removeTutor, { params });
    expect(await otherTutor.browser.refusedBy(peopleRoutes.class, { params })).toBe('no-such-thing');
    await admin.browser.call(peopleRoutes.changeRole, { params, body: { role: 'learner' } });
    expect((await server.store.people.classes.of(person.id)).map(({ manner }) => manner)).toEqual([]);
  });

  it('erases a person with all that is kept, and a class without its people', async () => {
    const { admin, learner, ownClass } = await started();
    const { id } = learner.person;
    const answer = answerWith({ id: 'one', at: MORNING, learner: id });
    await learner.browser.call(apiRoutes.keepAnswers, { body: { answers: [answer] } });
    const params = { person: id };
    expect(await admin.browser.refusedBy(peopleRoutes.erasePerson, { params, query: '?confirm=yes' })).toBe(
      'not-confirmed',
    );
    await admin.browser.call(peopleRoutes.erasePerson, { params, query: `?confirm=${id}` });
    expect(await learner.browser.refusedBy(apiRoutes.answers)).toBe('sign-in-first');
    expect(await server.store.answersOf(id)).toEqual([]);
    expect((await server.store.people.classes.get(ownClass.id))!.learners).toBe(0);
    const of = { params: { class: ownClass.id } };
    expect(await admin.browser.refusedBy(peopleRoutes.eraseClass, { ...of, query: '?confirm=' })).toBe(
      'not-confirmed',
    );
    await admin.browser.call(peopleRoutes.eraseClass, { ...of, query: `?confirm=${ownClass.id}` });
    expect(await admin.browser.refusedBy(peopleRoutes.class, of)).toBe('no-such-thing');
    expect((await server.store.people.persons.find('', 0, 9)).total).toBe(4);
  });
});

describe('what a learner has', () => {
  it('is their own: answers, settings, export and erasing', async () => {
    const { learner, otherLearner } = await started();
    const mine = answerWith({ id: 'one', at: MORNING, learner: learner.person.id });
    const send = { body: { answers: [mine] } };
    expect(await learner.browser.call(apiRoutes.keepAnswers, send)).toMatchObject({
      results: [{ result: 'kept' }],
    });
    expect(await otherLearner.browser.call(apiRoutes.keepAnswers, send)).toMatchObject({
      results: [{ result: 'refused', problem: { code: 'foreign-learner' } }],
    });
    expect(await otherLearner.browser.call(apiRoutes.answers)).toMatchObject({ last: 0 });
    const exported = await learner.browser.call(apiRoutes.exportLearner);
    expect(exported).toMatchObject({
      learner: learner.person.id,
      person: { name: 'Lea Learner', classes: [{ title: 'Flour line' }], sessions: [{ device: 'a test' }] },
    });
    expect(JSON.stringify(exported)).not.toMatch(/argon2|token/);
    const whose = `?confirm=${learner.person.id}`;
    expect(await otherLearner.browser.refusedBy(apiRoutes.eraseLearner, { query: whose })).toBe(
      'not-confirmed',
    );
    expect(await learner.browser.call(apiRoutes.eraseLearner, { query: whose })).toEqual({ answers: 1 });
    expect(await learner.browser.call(peopleRoutes.me)).toMatchObject({ person: { name: 'Lea Learner' } });
  });

  it('is given out to an administrator, whole', async () => {
    const { admin, learner } = await started();
    const params = { person: learner.person.id };
    const reply = await admin.browser.ask(requestFor(peopleRoutes.exportPerson, params));
    expect(learnerExport.parse(reply.json()).person).toMatchObject({ signIn: 'lea.learner' });
    expect(reply.headers['content-disposition']).toContain('attachment');
  });
});
