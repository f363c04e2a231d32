/** Two servers over one PostgreSQL serve one class, and neither knows of the other. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../../shared/api.ts';
import { homeworkRoutes } from '../../../shared/api-homework.ts';
import { openPostgresStore, type Store } from '../../../src/store/index.ts';
import { startPostgres, type TestPostgres } from '../../support/postgres.ts';
import { answersTo, type ClassServing, classServing, type Person, serverOn } from './class-serving.ts';

let postgres: TestPostgres;
let serving: ClassServing;
let otherStore: Store;
let other: Awaited<ReturnType<typeof serverOn>>;
beforeAll(async () => {
  postgres = await startPostgres();
  const address = await postgres.fresh();
  serving = await classServing(10, { kind: 'database', address });
  otherStore = await openPostgresStore(address, { now: () => serving.clock.now });
  other = await serverOn(otherStore, serving.clock);
});
afterAll(async () => {
  await other?.close();
  await otherStore?.close();
  await serving?.end();
  await postgres?.stop();
});

const { beginPaper, paper: viewPaper, saveAnswers, submitPaper } = homeworkRoutes;

/** The same person, asking this server and that one in turn. */
const onBoth = (person: Person): readonly Person[] => [person, person.at(other)];

describe('two servers over one database', () => {
  it('make one paper for each learner, and no circuit twice in a place, whoever makes them', async () => {
    const { set } = await serving.issued({ skills: ['make-contact'], items: 3 });
    const params = { set: set.id };
    const begun = await Promise.all([
      ...serving.learners.flatMap((learner) =>
        onBoth(learner).map(async (each) => [learner.id, (await each.call(beginPaper, { params })).id]),
      ),
      ...onBoth(serving.tutor).map(async (tutor) => {
        await tutor.call(homeworkRoutes.prepareHomework, { params });
        return ['', ''];
      }),
    ]);
    const papers = new Map(begun.filter(([learner]) => learner !== '').map(([learner, id]) => [learner, id]));
    for (const [learner, id] of begun) if (learner) expect(papers.get(learner)).toBe(id);
    expect(new Set(papers.values()).size).toBe(10);
    const circuits = await otherStore.homework.circuitsIn(set.id);
    expect([...circuits.values()].map(({ size }) => size)).toEqual([10, 10, 10]);
  });

  it('keep answers once and in order, hand in once, mark alike and remember once', async () => {
    const { set } = await serving.issued({ review: 'after-submitting' });
    const [learner] = serving.learners;
    const devices = onBoth(learner!);
    const { id } = await devices[0]!.call(beginPaper, { params: { set: set.id } });
    const params = { paper: id };
    const answers = await answersTo(serving, { id }, 'right');
    const saved = await Promise.all(
      [0, 1, 2, 3, 0, 1, 2, 3].map((item, at) =>
        devices[at % 2]!.call(saveAnswers, { params, body: { answers: [answers[item]] } }),
      ),
    );
    expect(saved.flatMap(({ results }) => results).filter(({ result }) => result === 'kept')).toHaveLength(4);
    const [here, there] = await Promise.all(devices.map((device) => device.call(viewPaper, { params })));
    expect(here).toEqual(there);
    expect(here!.saved.map(({ number }) => number)).toEqual([1, 2, 3, 4]);
    const handed = await Promise.all(
      [...devices, ...devices].map((each) => each.call(submitPaper, { params })),
    );
    expect(new Set(handed.map(({ submittedAt }) => submittedAt)).size).toBe(1);
    const reviews = await Promise.all(
      [...devices, ...devices].map((each) => each.call(homeworkRoutes.reviewPaper, { params })),
    );
    for (const review of reviews) expect(review).toEqual(reviews[0]);
    const kept = await Promise.all(devices.map((device) => device.call(apiRoutes.answers)));
    expect(kept[0]!.answers).toHaveLength(4);
    expect(kept[1]).toEqual(kept[0]);
    const reports = await Promise.all(
      onBoth(serving.tutor).map((tutor) =>
        tutor.call(homeworkRoutes.homeworkReport, { params: { set: set.id } }),
      ),
    );
    expect(reports[1]).toEqual(reports[0]);
    expect(reports[0]!.report).toMatchObject({ handedIn: 1, learners: 10 });
  });
});
