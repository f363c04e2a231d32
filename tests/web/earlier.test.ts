import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import type { AnswerRecord } from '../../shared/practice.ts';
import { judge } from '../../src/practice/index.ts';
import { blankAnswer } from '../../src/questions/index.ts';
import { Local } from '../../src/web/local/database.ts';
import { latestAnswers } from '../../src/web/local/earlier.ts';
import { LAMPS } from '../questions/fixed.ts';

it('the latest answers of the device come in the order in which they were given, and no more than are looked at', async () => {
  const local = await Local.open('earlier');
  expect(await latestAnswers(local)).toEqual([]);
  const task = {
    skill: 'lamps',
    why: 'due',
    question: LAMPS,
    circuit: 'c'.repeat(32),
    secondsExpected: 30,
  } as const;
  const given = {
    learner: 'me',
    answer: blankAnswer(LAMPS),
    help: { hint: false, explanation: false },
    secondsUsed: 9,
  };
  const record = (at: number): AnswerRecord =>
    judge(task, { ...given, id: `answer ${at}`, at }, new Map()).record;
  // They come from other devices as well, so not always in the order of their time.
  for (const at of [3, 1, 2]) await local.keep(record(at));
  expect((await latestAnswers(local)).map(({ at }) => at)).toEqual([1, 2, 3]);
  expect((await latestAnswers(local))[1]).toEqual(record(2));
  for (let at = 4; at <= 30; at++) await local.keep(record(at));
  expect((await latestAnswers(local)).map(({ at }) => at)).toEqual(
    Array.from({ length: 20 }, (_, index) => index + 11),
  );
  local.close();
});
