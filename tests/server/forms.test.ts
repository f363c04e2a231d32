/** What a schema only names is told in words. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { MOST_ANSWERS } from '../../shared/api.ts';
import { type ClassServing, classServing } from './class-serving.ts';

let server: ClassServing;
beforeAll(async () => {
  server = await classServing();
});
afterAll(() => server.end());

const account = { name: 'Nora New', signIn: 'nora.new', password: 'nine potted ferns', code: 'A1A1-A1A1' };

it.each([
  ['/api/join/look', { code: 'x' }, 'At code: eight letters and digits, as on the slip.'],
  [
    '/api/join',
    { ...account, password: 'short' },
    'At password: this text has to have at least 10 characters.',
  ],
  [
    '/api/join',
    { ...account, signIn: '-' },
    'At signIn: 2 to 40 small letters, digits, dots, _ and -, beginning with a letter or digit.',
  ],
  [
    '/api/join',
    { ...account, name: '=1+1' },
    'At name: begins with a letter or digit: spreadsheets run what begins with = + - or @.',
  ],
  ['/api/join', { ...account, name: 'a\nb' }, 'At name: one line, without control characters.'],
] as const)('%s %j', async (url, payload, told) => {
  const { message } = await server.refused({ method: 'POST', url, payload }, 'bad-value');
  expect(message).toBe(`The body is not of the form wanted. ${told}`);
});

it('as many answers as may be sent are named', async () => {
  const { message } = await server.learner.browser
    .ask({ method: 'POST', url: '/api/answers', payload: { answers: [] } })
    .then((reply) => reply.json() as { message: string });
  expect(message).toBe(
    `The body is not of the form wanted. At answers: a list of 1 to ${MOST_ANSWERS} answers.`,
  );
});
