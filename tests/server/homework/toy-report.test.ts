/** A report added from tests alone: a line in the contract and one on the server. */
import { afterEach, expect, it, vi } from 'vitest';
import { z } from 'zod';
import type { ApiRoute } from '../../../shared/api-route.ts';
import type { Desk } from '../../../src/server/homework/desk.ts';
import type { Asking } from '../../../src/server/people/gate.ts';

vi.mock('../../../shared/api-reports.ts', async (original) => {
  const { reportRoutes } = await original<typeof import('../../../shared/api-reports.ts')>();
  const { always, ofClass, tutor } = await import('../../../shared/homework-asked.ts');
  const headCount: ApiRoute = {
    ...tutor,
    method: 'GET',
    path: '/api/classes/:class/head-count',
    params: ofClass,
    query: z.strictObject({ add: z.number().int().default(0) }),
    summary: 'How many they are.',
    reply: z.strictObject({ learners: z.number() }),
    problems: always,
  };
  return { reportRoutes: { ...reportRoutes, headCount } };
});

vi.mock('../../../src/server/homework/reports/index.ts', async (original) => {
  const reports = await original<typeof import('../../../src/server/homework/reports/index.ts')>();
  const { checkTutor } = await import('../../../src/server/homework/access.ts');
  const { learnersOf } = await import('../../../src/server/homework/learners.ts');
  const headCount = async (
    desk: Desk,
    asking: Asking,
    { params, query }: { params: { class: string }; query: { add: number } },
  ) => {
    await checkTutor(desk, asking, params.class);
    return { learners: (await learnersOf(desk, params.class)).length + query.add };
  };
  return { ...reports, REPORTS: { ...reports.REPORTS, headCount } };
});

const { homeworkRoutes } = await import('../../../shared/api-homework.ts');
const { classServing } = await import('./class-serving.ts');

let end: (() => Promise<unknown>) | undefined;
afterEach(() => end?.());

it('is told to tutors of the class and to nobody else', async () => {
  const serving = await classServing();
  end = () => serving.end();
  const route = (homeworkRoutes as Readonly<Record<string, ApiRoute>>)['headCount']!;
  const params = { class: serving.classId };
  expect(await serving.tutor.call(route, { params })).toEqual({ learners: 2 });
  expect(await serving.tutor.call(route, { params, query: '?add=3' })).toEqual({ learners: 5 });
  await serving.tutor.refused(route, { params, query: '?add=x' }, 'bad-value');
  await serving.learners[0]!.refused(route, { params }, 'not-yours');
});
