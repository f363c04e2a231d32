/** A page says for whom it was opened; somebody else may have signed in since, in another tab of the same browser. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { peopleRoutes } from '../../shared/api-people.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { Browser, type ClassServing, classServing, PASSWORD } from './class-serving.ts';

let server: ClassServing;
beforeEach(async () => {
  server = await classServing();
});
afterEach(() => server.end());

/** The learner's browser, with a page in it that was opened for somebody. */
function pageOf(id: string): Browser {
  const page = new Browser(server, { 'polewise-person': id });
  page.cookie = server.learner.browser.cookie;
  return page;
}

describe('a request that says whose it is', () => {
  it('is answered when that is who has signed in, and refused as if nobody had otherwise', async () => {
    const own = pageOf(server.learner.person.id);
    expect(await own.call(apiRoutes.answers)).toMatchObject({ answers: [] });
    const other = pageOf(server.otherLearner.person.id);
    for (const route of [apiRoutes.answers, apiRoutes.settings, apiRoutes.bank, peopleRoutes.sessions])
      expect(await other.refusedBy(route), route.path).toBe('sign-in-first');
  });

  it('keeps no answer and no settings under the one who has signed in meanwhile', async () => {
    const other = pageOf(server.otherLearner.person.id);
    const { id } = server.learner.person;
    const record = answerWith({ id: 'one', learner: id, at: MORNING });
    expect(await other.refusedBy(apiRoutes.keepAnswers, { body: { answers: [record] } })).toBe(
      'sign-in-first',
    );
    const body = { changedAt: 5, assessmentAt: null, minutesADay: 9, newSkillsADay: null, placement: null };
    expect(await other.refusedBy(apiRoutes.putSettings, { body })).toBe('sign-in-first');
    expect(await server.store.answersOf(id)).toEqual([]);
    expect(await server.store.settingsOf(id)).toMatchObject({ minutesADay: null });
  });

  it('still hears who is there, and may sign in or out', async () => {
    const other = pageOf(server.otherLearner.person.id);
    expect(await other.call(peopleRoutes.me)).toMatchObject({ person: { id: server.learner.person.id } });
    const body = { signIn: 'lars.learner', password: PASSWORD };
    expect(await other.call(peopleRoutes.signIn, { body })).toMatchObject({
      person: { id: server.otherLearner.person.id },
    });
    expect(await other.call(apiRoutes.answers)).toMatchObject({ last: 0 });
    await other.call(peopleRoutes.signOut);
    expect(await other.refusedBy(apiRoutes.answers)).toBe('sign-in-first');
  });
});
