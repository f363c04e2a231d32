/**
 * Clocks: a set that closes in the night in which they change, seen from where they change, and a server's clock that is
 * set back around closing time. The changes are those of Europe/Berlin: summer time ends on the last Sunday of October and
 * begins on the last of March, both at 01:00 UTC (Directive 2000/84/EC).
 */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import { momentIn } from '../../src/cli/commands/homework/moments.ts';
import { commands } from '../../src/words/en/commands/index.ts';
import { answersTo, type ClassServing, classServing } from '../server/homework/class-serving.ts';

const HOUR = 3_600_000;

let serving: ClassServing | undefined;
afterEach(async () => {
  await serving?.end();
  serving = undefined;
});

const zone = process.env['TZ'];
beforeAll(() => {
  process.env['TZ'] = 'Europe/Berlin';
});
afterAll(() => {
  if (zone === undefined) delete process.env['TZ'];
  else process.env['TZ'] = zone;
});

/** A paper begun two hours before the set closes. */
async function begunBefore(closesAt: number) {
  serving = await classServing(1, undefined, closesAt - 2 * HOUR);
  const { learners } = serving;
  const { set } = await serving.issued({ opensAt: closesAt - 24 * HOUR, closesAt, attempts: 1 });
  const [learner] = learners;
  const begun = await learner!.call(homeworkRoutes.beginPaper, { params: { set: set.id } });
  const params = { paper: begun.id };
  const answers = await answersTo(serving, begun, 'right');
  const saving = (item: number) => ({ params, body: { answers: [answers[item]] } });
  return { serving, learner: learner!, params, saving, set };
}

describe('a closing time in the night in which the clocks change', () => {
  it('in autumn is the one moment it is, though its hour is there twice', async () => {
    // 02:30 for the second time.
    const closesAt = Date.UTC(2026, 9, 25, 1, 30);
    const { learner, params, saving, serving: at } = await begunBefore(closesAt);
    // 02:30 for the first time: there is an hour left.
    at.clock.now = closesAt - HOUR;
    expect(new Date(at.clock.now).getHours()).toBe(2);
    await learner.call(homeworkRoutes.saveAnswers, saving(0));
    const view = await learner.call(homeworkRoutes.paper, { params });
    expect(view.paper.closesAt - view.now).toBe(HOUR);
    at.clock.now = closesAt - 1;
    await learner.call(homeworkRoutes.saveAnswers, saving(1));
    at.clock.now = closesAt;
    expect(new Date(at.clock.now).getHours()).toBe(2);
    await learner.refused(homeworkRoutes.saveAnswers, saving(2), 'closed');
    const { mark } = await learner.call(homeworkRoutes.reviewPaper, { params });
    expect(mark.items.map(({ mark: { share } }) => share)).toEqual([1, 1, 0, 0]);
  });

  it('in spring comes as it was set, though the hour before it is left out', async () => {
    // 03:30, half an hour after the clocks went from 02:00 to 03:00.
    const closesAt = Date.UTC(2026, 2, 29, 1, 30);
    expect(new Date(closesAt).getHours()).toBe(3);
    const { learner, saving, serving: at } = await begunBefore(closesAt);
    at.clock.now = closesAt - 1;
    await learner.call(homeworkRoutes.saveAnswers, saving(0));
    at.clock.now = closesAt;
    await learner.refused(homeworkRoutes.saveAnswers, saving(1), 'closed');
  });

  it('is typed and printed so that it can be told which of the two it is', () => {
    const typed = (text: string): number => momentIn(commands, '--closes', text, 0);
    // Of an hour that is there twice the second is meant: nobody is closed out early.
    expect(typed('2026-10-25 02:30')).toBe(Date.UTC(2026, 9, 25, 1, 30));
    expect(typed('2026-10-25 01:59')).toBe(Date.UTC(2026, 9, 24, 23, 59));
    expect(typed('2026-10-25 03:00')).toBe(Date.UTC(2026, 9, 25, 2, 0));
    const { moment } = commands.moments;
    expect(moment(Date.UTC(2026, 9, 25, 1, 30))).not.toBe(moment(Date.UTC(2026, 9, 25, 0, 30)));
    // One that isn't there is not taken for another in silence.
    expect(() => typed('2026-03-29 02:30')).toThrow(/no such time/);
    expect(typed('2026-03-29 03:00')).toBe(Date.UTC(2026, 2, 29, 1, 0));
    expect(typed('2026-03-29')).toBe(Date.UTC(2026, 2, 28, 23, 0));
    // A day that no month has isn't one that the clocks left out.
    for (const day of ['2026-02-30', '2026-02-29', '2026-04-31 12:00', '2100-02-29'])
      expect(() => typed(day)).toThrow(/no such day/);
    expect(() => typed('2028-02-29')).not.toThrow();
  });
});

describe('a server whose clock is set back', () => {
  it('before closing keeps the order of answers, and the last one counts', async () => {
    const closesAt = Date.UTC(2026, 4, 20, 18);
    const { learner, params, saving, serving: at } = await begunBefore(closesAt);
    await learner.call(homeworkRoutes.saveAnswers, saving(0));
    const before = (await learner.call(homeworkRoutes.paper, { params })).saved[0]!;
    expect(before.id).toBe('right-0');
    at.clock.now -= 30 * 60_000;
    const blanks = await answersTo(at, { id: params.paper }, 'blank');
    await learner.call(homeworkRoutes.saveAnswers, { params, body: { answers: [blanks[0]] } });
    const { saved } = await learner.call(homeworkRoutes.paper, { params });
    expect(saved.map(({ id }) => id)).toEqual(['blank-0']);
    expect(saved[0]!.at).toBeGreaterThanOrEqual(before.at);
    await learner.call(homeworkRoutes.submitPaper, { params, body: {} });
    at.clock.now = closesAt;
    const { mark } = await learner.call(homeworkRoutes.reviewPaper, { params });
    expect(mark.items[0]!.mark.share).toBe(0);
  });

  it('after closing opens no paper again that was marked', async () => {
    const closesAt = Date.UTC(2026, 4, 20, 18);
    const { learner, params, saving, serving: at, set } = await begunBefore(closesAt);
    await learner.call(homeworkRoutes.saveAnswers, saving(0));
    at.clock.now = closesAt + 1000;
    await at.tutor.call(homeworkRoutes.homeworkReport, { params: { set: set.id } });
    at.clock.now = closesAt - HOUR;
    await learner.refused(homeworkRoutes.saveAnswers, saving(1), 'closed');
    await learner.refused(homeworkRoutes.submitPaper, { params, body: {} }, 'closed');
    at.clock.now = closesAt + HOUR;
    const { mark } = await learner.call(homeworkRoutes.reviewPaper, { params });
    expect(mark.items.map(({ answered }) => answered)).toEqual(['all', 'none', 'none', 'none']);
  });
});
