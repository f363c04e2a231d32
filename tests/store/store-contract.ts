/** What any store does, run over each database. */

import * as fc from 'fast-check';
import { type Kysely, sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import { learnerExport } from '../../shared/api.ts';
import type { Recall } from '../../shared/memory.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { changeSettings, mergeHistories, replay } from '../../src/memory/index.ts';
import { historyOf, lineOf, partsCounted } from '../../src/practice/index.ts';
import { openStore, type Store, StoreFailure, type StorePlace } from '../../src/store/index.ts';
import { migrate } from '../../src/store/migrate.ts';
import type { Tables } from '../../src/store/schema.ts';
import { english } from '../../src/words/en/core.ts';
import { store as words } from '../../src/words/en/store.ts';
import { say } from '../../src/words/statement.ts';
import { answerWith, DAY, MORNING } from '../support/answers.ts';
import { itInPrograms } from '../support/in-programs.ts';
import { writeAtOnce } from '../support/writers.ts';

export interface Database {
  /** A place where there is nothing yet. */
  fresh(): Promise<StorePlace>;
  /** The tables themselves, to spoil something in them. */
  tables(place: StorePlace): Kysely<Tables>;
}

/** An answer in short as a store has it, which counts its parts. */
const countedLine = (record: AnswerRecord) => ({
  ...lineOf(record),
  attempt: { ...record.attempt, parts: partsCounted(record.question, record.mark) },
});

/** What the memory makes of these answers, in the order of their time. */
const remembered = (records: readonly AnswerRecord[]): Readonly<Record<string, Recall>> =>
  Object.fromEntries(replay(mergeHistories([historyOf(records)])));

async function textOf(pieces: AsyncIterable<string>): Promise<string> {
  let text = '';
  for await (const piece of pieces) text += piece;
  return text;
}

/** What a check finds, as it is told. */
const faultsIn = async (store: Store): Promise<readonly string[]> =>
  (await store.check()).map(({ learner, fault }) => `${learner}: ${say(words.faults, fault)}`);

const numbersOf = (kept: readonly { number: number }[]): readonly number[] =>
  kept.map(({ number }) => number);
const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at + 1);

/** A mark as it was kept before ideas were kept by name. */
const asBefore = ({ misconceptions, parts, ...mark }: AnswerRecord['mark']) => ({
  ...mark,
  parts: parts.map(({ given, right, ...part }) => ({ ...part, given: given?.says, right: right.says })),
  misconceptions: misconceptions.map((id) => ({ id, idea: 'You read …', advice: 'Look …' })),
  explanation: [],
  problems: [],
});

export function storeContract(name: string, database: Database): void {
  describe(`a store on ${name}`, () => {
    const LATE = MORNING + 4000 * DAY;
    const inStore = async <T>(
      use: (store: Store, place: StorePlace) => Promise<T>,
      now: () => number = () => LATE,
    ): Promise<T> => {
      const place = await database.fresh();
      const store = await openStore(place, { now });
      try {
        return await use(store, place);
      } finally {
        await store.close();
      }
    };
    const onTables = async (
      place: StorePlace,
      use: (db: Kysely<Tables>) => Promise<unknown>,
    ): Promise<void> => {
      const db = database.tables(place);
      try {
        await use(db);
      } finally {
        await db.destroy();
      }
    };

    it('gives back what was kept, whole and in the order of arrival, also after it was closed', async () => {
      const place = await database.fresh();
      const records = [
        answerWith({ id: 'late', at: MORNING + DAY, share: 0.5 }),
        answerWith({ id: 'early', at: MORNING }),
      ];
      const store = await openStore(place, { now: () => LATE });
      expect(await store.keepAnswers(records)).toEqual([
        { kept: true, number: 1 },
        { kept: true, number: 2 },
      ]);
      await store.close();
      const again = await openStore(place, { now: () => LATE });
      expect(await again.answersOf('me')).toEqual(records);
      const page = await again.entriesAfter('me', 0, 10);
      expect(page.last).toBe(2);
      expect(page.history).toMatch(/^\S{8,}$/);
      expect(page.entries.map((entry) => entry.arrivedAt)).toEqual([LATE, LATE]);
      await again.close();
    });

    it('keeps an id once for each learner, and the first answer that came with it', () =>
      inStore(async (store) => {
        const first = answerWith({ id: 'one', at: MORNING });
        const second = answerWith({ id: 'one', at: MORNING + 5, share: 0 });
        const other = answerWith({ id: 'one', at: MORNING, learner: 'somebody' });
        expect(await store.keepAnswer(first)).toBe(true);
        expect(await store.keepAnswer(second)).toBe(false);
        expect(await store.keepAnswers([second, other, other])).toEqual([
          { kept: false, number: 1 },
          { kept: true, number: 1 },
          { kept: false, number: 1 },
        ]);
        expect(await store.answersOf('me')).toEqual([first]);
        expect(await store.answersOf('somebody')).toEqual([other]);
        expect(await store.recallsOf('me')).toEqual(new Map(Object.entries(remembered([first]))));
      }));

    it('keeps an id once when it arrives many times at the same moment', () =>
      inStore(async (store) => {
        const record = answerWith({ id: 'one', at: MORNING });
        const results = await Promise.all(
          Array.from({ length: 20 }, () => store.keepAnswers([record, record])),
        );
        expect(results.flat().filter(({ kept }) => kept)).toHaveLength(1);
        expect(new Set(numbersOf(results.flat()))).toEqual(new Set([1]));
        expect(await store.answersOf('me')).toHaveLength(1);
      }));

    itInPrograms(
      'numbers without gaps when several programs write for the same learners, sending some answers twice',
      async () => {
        const place = await database.fresh();
        await (await openStore(place)).close();
        const ids = (from: number): string[] => Array.from({ length: 40 }, (_, at) => `answer-${from + at}`);
        const job = { place, learners: ['me', 'somebody'] };
        await writeAtOnce([
          { ...job, ids: ids(0), batch: 1 },
          { ...job, ids: ids(20), batch: 3, learners: ['somebody', 'me'] },
          { ...job, ids: ids(60), batch: 10 },
        ]);
        const store = await openStore(place);
        for (const learner of ['me', 'somebody']) {
          const { entries, last } = await store.entriesAfter(learner, 0, 1000);
          expect(numbersOf(entries)).toEqual(upTo(100));
          expect(last).toBe(100);
          expect(new Set(entries.map(({ id }) => id))).toEqual(new Set([...ids(0), ...ids(40), ...ids(60)]));
        }
        expect(await store.check()).toEqual([]);
        await store.close();
      },
    );

    itInPrograms('begins once when several programs begin it together', async () => {
      const place = await database.fresh();
      const job = { place, learners: ['me'], batch: 1 };
      await writeAtOnce(['a', 'b', 'c'].map((id) => ({ ...job, ids: [id] })));
      const store = await openStore(place);
      expect(await store.answersOf('me')).toHaveLength(3);
      await store.close();
    });

    it('keeps a batch whole or not at all', () =>
      inStore(async (store) => {
        const good = answerWith({ id: 'good', at: MORNING });
        const broken = { ...answerWith({ id: 'broken', at: MORNING }), answer: { impossible: 1n } };
        await expect(store.keepAnswers([good, broken as unknown as AnswerRecord])).rejects.toThrow();
        expect(await store.entriesAfter('me', 0, 10)).toEqual({ history: null, last: 0, entries: [] });
        expect((await store.recallsOf('me')).size).toBe(0);
        expect(await store.keepAnswers([good])).toEqual([{ kept: true, number: 1 }]);
      }));

    it('keeps batches longer than one statement takes', () =>
      inStore(async (store) => {
        const records = Array.from({ length: 1200 }, (_, at) =>
          answerWith({ id: `a${at}`, at: MORNING + at, skill: `skill-${at % 230}`, learner: `l${at % 3}` }),
        );
        expect(numbersOf(await store.keepAnswers(records))).toEqual(
          records.map((_, at) => Math.floor(at / 3) + 1),
        );
        expect((await store.recallsOf('l1')).size).toBe(230);
        expect(await store.check()).toEqual([]);
      }));

    it('gives answers a page at a time', () =>
      inStore(async (store) => {
        await store.keepAnswers(upTo(7).map((at) => answerWith({ id: `a${at}`, at: MORNING + at })));
        const { entries, last, history } = await store.entriesAfter('me', 3, 2);
        expect(numbersOf(entries)).toEqual([4, 5]);
        expect(last).toBe(7);
        expect(await store.entriesAfter('me', 7, 2)).toEqual({ history, last: 7, entries: [] });
        expect(await store.entriesAfter('nobody', 0, 2)).toEqual({ history: null, last: 0, entries: [] });
      }));

    it('remembers what a replay in the order of time remembers, in whatever order and batches answers arrive', async () => {
      const arrival = fc.record({
        days: fc.double({ min: 0, max: 400, noNaN: true }),
        skill: fc.constantFrom('changeover', 'seal-in', 'two-poles'),
        share: fc.constantFrom(0 as const, 0.5 as const, 1 as const),
        circuit: fc.constantFrom('one', 'two', 'three'),
        endsBatch: fc.boolean(),
      });
      await inStore(async (store) => {
        let learner = 0;
        await fc.assert(
          fc.asyncProperty(fc.array(arrival, { minLength: 1, maxLength: 30 }), async (arrivals) => {
            const name = `learner-${++learner}`;
            const all: AnswerRecord[] = [];
            let batch: AnswerRecord[] = [];
            for (const [at, { days, endsBatch, ...rest }] of arrivals.entries()) {
              // Whole hours, so that some are of the same moment.
              const moment = MORNING + Math.floor((days * DAY) / 3_600_000) * 3_600_000;
              batch.push(answerWith({ id: `a${at}`, at: moment, learner: name, ...rest }));
              if (!endsBatch && at < arrivals.length - 1) continue;
              await store.keepAnswers(batch);
              all.push(...batch);
              batch = [];
              expect(Object.fromEntries(await store.recallsOf(name))).toEqual(remembered(all));
            }
            await store.rebuildRecalls(name);
            expect(Object.fromEntries(await store.recallsOf(name))).toEqual(remembered(all));
          }),
          { numRuns: 25 },
        );
        expect(await store.check()).toEqual([]);
      });
    });

    it('comes to the same memory whichever of two devices that were offline together arrives first', async () => {
      const phone = [0, 2, 9].map((day) => answerWith({ id: `phone-${day}`, at: MORNING + day * DAY }));
      const desk = [1, 5, 12].map((day) =>
        answerWith({ id: `desk-${day}`, at: MORNING + day * DAY, share: day === 5 ? 0.5 : 1 }),
      );
      const states: Readonly<Record<string, Recall>>[] = [];
      for (const batches of [
        [phone, desk],
        [desk, phone],
        [phone.slice(0, 1), desk, phone.slice(1)],
      ])
        await inStore(async (store) => {
          for (const batch of batches) await store.keepAnswers(batch);
          states.push(Object.fromEntries(await store.recallsOf('me')));
          expect(await store.answersOf('me')).toEqual(batches.flat());
        });
      expect(states).toEqual(Array(3).fill(remembered([...phone, ...desk])));
    });

    it('counts an answer dated in the future as given when it arrived, whatever the time is later', async () => {
      const today = MORNING + 10 * DAY;
      let now = today;
      await inStore(
        async (store) => {
          const ahead = answerWith({ id: 'ahead', at: MORNING + 375 * DAY });
          const before = answerWith({ id: 'before', at: MORNING });
          await store.keepAnswers([before, ahead]);
          const asCounted = [before, { ...ahead, at: today }];
          expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(remembered(asCounted));
          // The clock was put right; the next answer follows upon it.
          now = today + DAY;
          const next = answerWith({ id: 'next', at: now });
          await store.keepAnswers([next]);
          expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(remembered([...asCounted, next]));
          // Its date has come and gone, which changes nothing any more.
          now = MORNING + 400 * DAY;
          expect(await store.check()).toEqual([]);
          const last = answerWith({ id: 'last', at: now });
          await store.keepAnswers([last]);
          const all = remembered([...asCounted, next, last]);
          expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(all);
          await store.rebuildRecalls('me');
          expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(all);
          expect((await store.linesAfter('me', 0, 9)).lines.map(({ at }) => at)).toEqual([
            MORNING,
            today,
            today + DAY,
            now,
          ]);
          expect(await store.answersOf('me')).toEqual([before, ahead, next, last]);
        },
        () => now,
      );
    });

    it('gives answers in short as they count, a page at a time, with which history they are of', () =>
      inStore(async (store) => {
        expect(await store.linesAfter('me', 0, 9)).toEqual({
          history: null,
          last: 0,
          corrections: 0,
          lines: [],
        });
        expect(await store.standingOf('me')).toEqual({ history: null, last: 0, recalls: new Map() });
        const [half, right] = [
          answerWith({ id: 'half', at: MORNING, share: 0.5 }),
          answerWith({ id: 'right', at: MORNING + 5 }),
        ];
        const found = { mark: right.mark, circuit: 'found-out', secondsExpected: 7 };
        const third = answerWith({ id: 'third', at: MORNING + 9, share: 0 });
        await store.keepAnswers([half, right, third], new Map([[third, found]]));
        const page = await store.linesAfter('me', 0, 2);
        const { history, last } = await store.entriesAfter('me', 0, 1);
        expect(page).toMatchObject({ history, last, corrections: 0 });
        expect(page.lines).toEqual([
          { ...countedLine(half), number: 1, correct: false, idea: half.mark.misconceptions[0] },
          { ...countedLine(right), number: 2, correct: true, idea: null },
        ]);
        expect((await store.linesAfter('me', 2, 2)).lines).toEqual([
          {
            ...countedLine({
              ...third,
              ...found,
              attempt: { ...third.attempt, share: 1, secondsExpected: 7 },
            }),
            number: 3,
          },
        ]);
        const { recalls, ...where } = await store.standingOf('me');
        expect(where).toEqual({ history, last: 3 });
        expect(recalls).toEqual(await store.recallsOf('me'));
        expect([...recalls.keys()]).toEqual(['changeover']);
      }));

    it('says that marks were corrected, and gives the lines with the marks that hold', () =>
      inStore(async (store) => {
        const [one, other] = ['one', 'other'].map((id) => answerWith({ id, at: MORNING }));
        await store.keepAnswers([one!, other!]);
        const wrong = answerWith({ id: 'one', at: MORNING, share: 0 }).mark;
        const markAgain = (record: AnswerRecord) => (record.id === 'one' ? wrong : record.mark);
        for (const _ of [1, 2]) {
          await store.correctMarks(markAgain);
          const { corrections, lines } = await store.linesAfter('me', 0, 9);
          // Once more changes nothing, and nobody has to fetch anything.
          expect(corrections).toBe(1);
          expect(lines.map(({ correct }) => correct)).toEqual([false, true]);
          expect(lines[0]).toMatchObject({ idea: wrong.misconceptions[0], attempt: { share: 0 } });
        }
      }));

    it('goes on when its own clock is set back', async () => {
      let now = LATE;
      await inStore(
        async (store) => {
          const records = upTo(4).map((at) => answerWith({ id: `a${at}`, at: LATE - 4000 + at }));
          await store.keepAnswers(records.slice(0, 2));
          now = MORNING;
          await store.keepAnswers(records.slice(2));
          const { entries } = await store.entriesAfter('me', 0, 9);
          expect(numbersOf(entries)).toEqual([1, 2, 3, 4]);
          expect(entries.map(({ arrivedAt }) => arrivedAt)).toEqual([LATE, LATE, MORNING, MORNING]);
          now = LATE;
          await store.rebuildRecalls('me');
          expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(remembered(records));
        },
        () => now,
      );
    });

    it('works recall states out anew when they can be read no more, and puts others in their place when told', () =>
      inStore(async (store, place) => {
        const records = upTo(3).map((day) => answerWith({ id: `a${day}`, at: MORNING + day * DAY }));
        await store.keepAnswers(records);
        await onTables(place, (db) =>
          db.updateTable('recalls').set({ recall_json: '{"kind":"old"}' }).execute(),
        );
        expect(await store.check()).toHaveLength(1);
        expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(remembered(records));
        expect(await store.check()).toEqual([]);
        const fewer = new Map(Object.entries(remembered(records.slice(1))));
        await store.replaceRecalls('me', fewer);
        expect(await store.recallsOf('me')).toEqual(fewer);
        expect((await faultsIn(store)).join()).toContain('changeover');
      }));

    it('goes on with a recall state that can be read no more when the next answer comes', () =>
      inStore(async (store, place) => {
        const records = upTo(3).map((day) => answerWith({ id: `a${day}`, at: MORNING + day * DAY }));
        await store.keepAnswers(records.slice(0, 2));
        await onTables(place, (db) => db.updateTable('recalls').set({ recall_json: 'gone' }).execute());
        await store.keepAnswers(records.slice(2));
        expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(remembered(records));
      }));

    it('keeps settings, the later change before the earlier, and none dated in the future', () =>
      inStore(async (store) => {
        const none = await store.settingsOf('me');
        expect(none).toMatchObject({ changedAt: 0, assessmentAt: null, placement: null });
        const first = { ...none, changedAt: MORNING, minutesADay: 10 };
        const second = { ...none, changedAt: MORNING + 5, assessmentAt: MORNING + 30 * DAY };
        expect(await store.putSettings('me', second)).toEqual(second);
        expect(await store.putSettings('me', first)).toEqual(second);
        const ahead = { ...first, changedAt: LATE + 99 * DAY };
        expect(await store.putSettings('me', ahead)).toEqual({ ...first, changedAt: LATE });
        expect(await store.settingsOf('me')).toEqual({ ...first, changedAt: LATE });
        expect(await store.settingsOf('somebody')).toEqual(none);
      }));

    it('keeps of each setting the later change, whichever device sends first', () =>
      inStore(async (store) => {
        const none = await store.settingsOf('me');
        const phone = changeSettings(none, { minutesADay: 25 }, MORNING + 5);
        const desk = changeSettings(none, { newSkillsADay: 3 }, MORNING + 2);
        await store.putSettings('me', phone);
        expect(await store.putSettings('me', desk)).toMatchObject({ minutesADay: 25, newSkillsADay: 3 });
        expect(await store.settingsOf('me')).toMatchObject({ minutesADay: 25, newSkillsADay: 3 });
      }));

    it('reads settings that it does not know as none', () =>
      inStore(async (store, place) => {
        const none = await store.settingsOf('me');
        await store.putSettings('me', { ...none, changedAt: MORNING, minutesADay: 10 });
        await onTables(place, (db) =>
          db.updateTable('settings').set({ settings_json: '{"bells":3}' }).execute(),
        );
        expect(await store.settingsOf('me')).toEqual(none);
      }));

    it('goes by the share of an answer of which the memory can read nothing more, names it, and goes on', () =>
      inStore(async (store, place) => {
        await store.keepAnswers([
          answerWith({ id: 'a1', at: MORNING }),
          answerWith({ id: 'a2', at: MORNING + DAY }),
        ]);
        await store.keepAnswer({ ...answerWith({ id: 'b1', at: MORNING }), learner: 'other' });
        await onTables(place, (db) =>
          db.updateTable('answers').set({ attempt_json: '{' }).where('id', 'in', ['a2', 'b1']).execute(),
        );
        expect(await faultsIn(store)).toEqual([
          "me: What the memory needs of answer 2 (a2) can't be read; its share counts.",
          "me: The recall state of changeover isn't the one that the answers lead to; rebuilding mends that.",
          "other: What the memory needs of answer 1 (b1) can't be read; its share counts.",
          "other: The recall state of changeover isn't the one that the answers lead to; rebuilding mends that.",
        ]);
        // Nothing of the history is kept back for it: neither its lines nor what follows from the next answer.
        await store.keepAnswer(answerWith({ id: 'a0', at: MORNING - DAY, share: 0 }));
        const { lines } = await store.linesAfter('me', 0, 9);
        expect(lines.map(({ id, attempt }) => [id, attempt.share])).toEqual([
          ['a1', 1],
          ['a2', 1],
          ['a0', 0],
        ]);
        expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(
          Object.fromEntries(replay(mergeHistories([lines]))),
        );
      }));

    it('shows a record that can be read no more as unreadable and everything else as before', () =>
      inStore(async (store, place) => {
        const records = upTo(4).map((day) => answerWith({ id: `a${day}`, at: MORNING + day * DAY }));
        await store.keepAnswers(records);
        const spoil = (number: number, row: { record_json?: string; record_version?: number }) =>
          onTables(place, (db) => db.updateTable('answers').set(row).where('number', '=', number).execute());
        await spoil(2, { record_json: '{"id":"a2","learner":"me"}' });
        await spoil(3, { record_version: 99 });
        await spoil(4, { record_json: 'not JSON' });
        const { entries } = await store.entriesAfter('me', 0, 10);
        expect(entries.map(({ kind }) => kind)).toEqual(['answer', 'unreadable', 'unreadable', 'unreadable']);
        expect(
          entries.map((entry) => (entry.kind === 'unreadable' ? say(words.unreadable, entry.why) : '')),
        ).toEqual([
          '',
          expect.stringMatching(/^At at: /),
          expect.stringContaining('later version'),
          expect.stringContaining('not JSON'),
        ]);
        expect(await store.answersOf('me')).toEqual(records.slice(0, 1));
        await store.rebuildRecalls('me');
        expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(remembered(records));
        expect((await faultsIn(store)).map((told) => told.slice(0, 17))).toEqual([
          'me: Answer 2 (a2)',
          'me: Answer 3 (a3)',
          'me: Answer 4 (a4)',
        ]);
        const text = await textOf(store.exportOf('me', english));
        const kept = learnerExport.parse(JSON.parse(text)).answers.map(({ record }) => record);
        expect(kept).toEqual([records[0], { id: 'a2', learner: 'me' }, records[2], 'not JSON']);
      }));

    it('exports everything about one learner and nothing about another', () =>
      inStore(async (store) => {
        const own = upTo(130).map((at) =>
          answerWith({ id: `a${at}`, at: MORNING + at, skill: `s${at % 4}` }),
        );
        await store.keepAnswers([...own, answerWith({ id: 'x', at: MORNING, learner: 'somebody' })]);
        const settings = await store.putSettings('me', {
          ...(await store.settingsOf('me')),
          changedAt: MORNING,
          minutesADay: 15,
        });
        const text = await textOf(store.exportOf('me', english));
        const value = learnerExport.parse(JSON.parse(text));
        expect(value).toMatchObject({ learner: 'me', exportedAt: LATE, settings });
        expect(value.answers.map(({ record }) => record)).toEqual(own);
        expect(numbersOf(value.answers)).toEqual(upTo(130));
        expect(value.recalls).toEqual(remembered(own));
        expect(text).not.toContain('somebody');
        const nothing = JSON.parse(await textOf(store.exportOf('nobody', english)));
        expect(learnerExport.parse(nothing).answers).toEqual([]);
      }));

    it('erases one learner and leaves the others, and begins another history afterwards', () =>
      inStore(async (store, place) => {
        const mine = answerWith({ id: 'one', at: MORNING });
        await store.keepAnswers([mine, answerWith({ id: 'one', at: MORNING, learner: 'somebody' })]);
        await store.putSettings('me', { ...(await store.settingsOf('me')), changedAt: 1, minutesADay: 5 });
        const { history } = await store.entriesAfter('me', 0, 1);
        expect(await store.erase('me')).toEqual({ answers: 1 });
        expect(await store.entriesAfter('me', 0, 1)).toEqual({ history: null, last: 0, entries: [] });
        expect((await store.recallsOf('me')).size).toBe(0);
        expect((await store.settingsOf('me')).minutesADay).toBeNull();
        expect(await store.learners()).toEqual([{ learner: 'somebody', answers: 1 }]);
        await onTables(place, async (db) => {
          for (const table of ['answers', 'recalls', 'settings', 'histories'] as const)
            expect(
              await db.selectFrom(table).select('learner').where('learner', '=', 'me').execute(),
            ).toEqual([]);
        });
        expect(await store.erase('me')).toEqual({ answers: 0 });
        expect(await store.learners()).toHaveLength(1);
        await store.keepAnswers([mine]);
        expect((await store.entriesAfter('me', 0, 1)).history).not.toBe(history);
      }));

    it('notes corrected marks beside the records, and the memory follows them', () =>
      inStore(async (store) => {
        const records = upTo(3).map((day) => answerWith({ id: `a${day}`, at: MORNING + day * DAY }));
        await store.keepAnswers(records);
        const half = answerWith({ id: 'x', at: 0, share: 0.5 }).mark;
        const markAgain = (record: AnswerRecord) =>
          record.id === 'a2' ? half : record.id === 'a3' ? null : record.mark;
        expect(await store.correctMarks(markAgain)).toEqual({
          marked: 2,
          left: 1,
          changed: [{ learner: 'me', number: 2, id: 'a2' }],
        });
        const { entries } = await store.entriesAfter('me', 0, 9);
        expect(entries).toMatchObject([
          { record: records[0], correctedMark: null },
          { record: records[1], correctedMark: half },
          { record: records[2], correctedMark: null },
        ]);
        const attempt = { ...records[1]!.attempt, share: 0.5 };
        const inForce = records.with(1, { ...records[1]!, attempt, mark: half });
        expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(remembered(inForce));
        expect(await store.check()).toEqual([]);
        expect((await store.correctMarks(markAgain)).changed).toEqual([]);
        const back = await store.correctMarks((record) => record.mark);
        expect(back.changed).toHaveLength(1);
        expect((await store.entriesAfter('me', 1, 1)).entries[0]).toMatchObject({ correctedMark: null });
        expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(remembered(records));
      }));

    it('gives its histories new names when a backup was put back', () =>
      inStore(async (store) => {
        await store.keepAnswers(
          ['me', 'somebody'].map((learner) => answerWith({ id: 'one', at: MORNING, learner })),
        );
        const named = async () =>
          Promise.all(['me', 'somebody'].map(async (one) => (await store.entriesAfter(one, 0, 1)).history));
        const before = await named();
        await store.renameHistories();
        const after = await named();
        expect(new Set([...before, ...after]).size).toBe(4);
        expect(await store.check()).toEqual([]);
        expect(await store.answersOf('me')).toHaveLength(1);
      }));

    it('finds what is missing', () =>
      inStore(async (store, place) => {
        await store.keepAnswers(upTo(3).map((at) => answerWith({ id: `a${at}`, at: MORNING + at })));
        await onTables(place, async (db) => {
          await db.deleteFrom('answers').where('number', '=', 2).execute();
          await db.insertInto('settings').values({ learner: 'stray', settings_json: '{}' }).execute();
        });
        expect(await faultsIn(store)).toEqual([
          expect.stringContaining('stray: '),
          expect.stringContaining('me: Answer 2 is missing'),
          expect.stringContaining('me: The recall state of changeover'),
        ]);
      }));

    it('finds a record that is another answer’s, and answers missing at the end', () =>
      inStore(async (store, place) => {
        const [one, two, three] = upTo(3).map((at) => answerWith({ id: `a${at}`, at: MORNING }));
        await store.keepAnswers([one!, two!, three!]);
        await onTables(place, async (db) => {
          const record = { ...two!, id: 'another' };
          await db
            .updateTable('answers')
            .set({ record_json: JSON.stringify(record) })
            .where('number', '=', 2)
            .execute();
          await db.deleteFrom('answers').where('number', '=', 3).execute();
        });
        await store.rebuildRecalls('me');
        expect(await faultsIn(store)).toEqual([
          "me: Answer 2 (a2) holds another answer's record.",
          'me: There should be 3 answers and the last one is 2.',
        ]);
      }));

    it('is begun only where that is wanted', async () => {
      const place = await database.fresh();
      const there = () => openStore(place, { now: () => LATE, begins: false });
      await expect(there()).rejects.toMatchObject({ code: 'no-store' });
      await (await openStore(place, { now: () => LATE })).close();
      await (await there()).close();
    });

    it('takes over a store of the first form', async () => {
      const place = await database.fresh();
      const records = upTo(450).map((at) => answerWith({ id: `a${at}`, at: MORNING + at * 1000 }));
      await onTables(place, async (db) => {
        await migrate(db, { upTo: '001-answers-and-recalls' });
        for (const [at, record] of records.entries())
          await sql`insert into answers (id, learner, number, at, skill, circuit, kind, grade, share, record_json)
            values (${record.id}, 'me', ${at + 1}, ${record.at}, ${record.skill}, ${record.circuit},
            ${record.question.kind}, ${record.grade}, ${record.mark.share}, ${JSON.stringify(record)})`.execute(
            db,
          );
        await sql`insert into recalls (learner, skill, recall_json)
          values ('me', 'changeover', ${JSON.stringify(remembered(records)['changeover'])})`.execute(db);
      });
      const store = await openStore(place, { now: () => LATE });
      expect(await store.answersOf('me')).toEqual(records);
      expect(await store.check()).toEqual([]);
      const more = answerWith({ id: 'more', at: MORNING + DAY });
      expect(await store.keepAnswers([records[0]!, more])).toEqual([
        { kept: false, number: 1 },
        { kept: true, number: 451 },
      ]);
      await store.close();
    });

    it('takes what homework handed over for proven, and nothing else of a store that issued no questions', async () => {
      const place = await database.fresh();
      const paper = 'paper0000000000000001';
      const records = [`${paper}-0`, `${paper}-x`, 'paper0000000000000002-0', 'own'].map((id, at) =>
        answerWith({ id, at: MORNING + at * 1000 }),
      );
      await onTables(place, async (db) => {
        await migrate(db, { upTo: '005-tried-elsewhere' });
        await sql`insert into papers (id, code, "set", learner, attempt, made_at, saves, paper_json)
          values (${paper}, 'code', 'a set', 'me', 1, 0, 0, '{}')`.execute(db);
        await sql`insert into histories (learner, history, answers) values ('me', 'h', ${records.length})`.execute(
          db,
        );
        for (const [at, record] of records.entries())
          await sql`insert into answers (learner, number, id, arrived_at, at, skill, circuit, kind, share, grade,
            attempt_json, record_version, record_json) values ('me', ${at + 1}, ${record.id}, 0, ${record.at},
            ${record.skill}, ${record.circuit}, ${record.question.kind}, 1, ${record.grade},
            ${JSON.stringify(record.attempt)}, 1, ${JSON.stringify(record)})`.execute(db);
      });
      const store = await openStore(place, { now: () => LATE });
      expect((await store.proofsOf('me')).map(({ id, at, source }) => [id, at, source])).toEqual([
        [`${paper}-0`, MORNING, 'homework'],
      ]);
      await store.close();
    });

    it('counts what was kept before as given when it arrived, where its date was later, and knows its marks in short', async () => {
      const place = await database.fresh();
      const arrived = MORNING + DAY;
      const records = [
        answerWith({ id: 'unnoted', at: MORNING }),
        answerWith({ id: 'ahead', at: MORNING + 300 * DAY, share: 0.5 }),
        answerWith({ id: 'corrected', at: MORNING, skill: 'one-pole' }),
        answerWith({ id: 'broken', at: MORNING, skill: 'one-pole' }),
        answerWith({ id: 'clock-never-set', at: MORNING, skill: 'one-pole' }),
      ];
      // A small machine just switched on: its clock begins at 1970.
      const arrivals: Readonly<Record<string, number>> = { unnoted: 0, 'clock-never-set': 90_000 };
      const wrong = answerWith({ id: 'x', at: 0, share: 0 }).mark;
      await onTables(place, async (db) => {
        await migrate(db, { upTo: '008-throttles' });
        await sql`insert into histories (learner, history, answers) values ('me', 'h', ${records.length})`.execute(
          db,
        );
        for (const [at, record] of records.entries())
          await sql`insert into answers (learner, number, id, arrived_at, at, skill, circuit, kind, share, grade,
            attempt_json, record_version, record_json, corrected_mark_json) values ('me', ${at + 1}, ${record.id},
            ${arrivals[record.id] ?? arrived}, ${record.at}, ${record.skill}, ${record.circuit}, ${record.question.kind},
            ${record.attempt.share}, ${record.grade}, ${JSON.stringify(record.attempt)}, 1,
            ${record.id === 'broken' ? '{' : JSON.stringify({ ...record, mark: asBefore(record.mark) })},
            ${record.id === 'corrected' ? JSON.stringify(asBefore(wrong)) : null})`.execute(db);
        // As the store of before had them: the one dated ahead counted as of its date, and the other skill as it is.
        for (const [skill, state] of Object.entries(remembered(records)))
          await sql`insert into recalls (learner, skill, recall_json, tentative)
            values ('me', ${skill}, ${JSON.stringify(state)}, 1)`.execute(db);
      });
      const store = await openStore(place, { now: () => LATE });
      const { lines } = await store.linesAfter('me', 0, 9);
      expect(lines.map(({ at, correct, idea }) => [at, correct, idea])).toEqual([
        [MORNING, true, null],
        [arrived, false, 'both-legs-closed'],
        [MORNING, false, 'both-legs-closed'],
        [MORNING, true, null],
        [MORNING, true, null],
      ]);
      expect((await faultsIn(store)).filter((told) => told.includes('recall'))).toEqual([]);
      expect(Object.fromEntries(await store.recallsOf('me'))).toEqual(
        // By the marks that hold; what the record that can't be read asked, nobody knows.
        Object.fromEntries(replay(mergeHistories([lines]))),
      );
      expect(lines.map(({ attempt }) => attempt.parts?.right)).toEqual([2, 1, 0, undefined, 2]);
      // What comes now is believed no further than what had come.
      await store.keepAnswer(answerWith({ id: 'next', at: LATE + DAY }));
      expect((await store.linesAfter('me', 5, 9)).lines.map(({ at }) => at)).toEqual([LATE]);
      await store.close();
    });

    it('counts the parts of answers that were kept before anybody did, and has them fetched anew', async () => {
      const place = await database.fresh();
      const records = upTo(3).map((day) => answerWith({ id: `a${day}`, at: MORNING + day * DAY }));
      const wired = {
        ...records[0]!,
        id: 'wired',
        skill: 'wirings',
        question: { kind: 'wiring', choices: [1, 2, 3, 4] },
        mark: { ...records[0]!.mark, parts: records[0]!.mark.parts.slice(0, 1) },
      };
      const before = { provenOn: ['c1', 'c2'], kind: 'begun', reviews: 3 };
      await onTables(place, async (db) => {
        await migrate(db, { upTo: '010-ideas-by-name' });
        await sql`insert into histories (learner, history, answers) values ('me', 'h', 4)`.execute(db);
        for (const [at, record] of [...records, wired].entries())
          await sql`insert into answers (learner, number, id, arrived_at, at, counts_at, skill, circuit, kind, share,
            grade, attempt_json, record_version, record_json) values ('me', ${at + 1}, ${record.id}, ${record.at},
            ${record.at}, ${record.at}, ${record.skill}, ${record.circuit}, ${record.question.kind}, 1, ${record.grade},
            ${JSON.stringify(record.attempt)}, 2, ${JSON.stringify(record)})`.execute(db);
        await sql`insert into recalls (learner, skill, recall_json)
          values ('me', 'changeover', ${JSON.stringify(before)})`.execute(db);
      });
      const store = await openStore(place, { now: () => LATE });
      const { lines, corrections } = await store.linesAfter('me', 0, 9);
      expect(corrections).toBe(1);
      expect(lines.map(({ attempt }) => attempt.parts)).toEqual([
        ...records.map(() => ({ asked: 2, right: 2, luck: 0.25 })),
        { asked: 1, right: 1, luck: 0.3 },
      ]);
      expect((await store.recallsOf('me')).get('changeover')).toEqual(remembered(records)['changeover']);
      await store.close();
    });

    it('leaves a store of a later version alone', async () => {
      const place = await database.fresh();
      await (await openStore(place)).close();
      await onTables(place, (db) =>
        sql`insert into kysely_migration (name, timestamp) values ('999-later', 'then')`.execute(db),
      );
      const failure = await openStore(place).catch((error: unknown) => error);
      expect(failure).toBeInstanceOf(StoreFailure);
      expect(failure).toMatchObject({ code: 'store-from-later' });
    });

    it('answers while it is open', () =>
      inStore(async (store) => {
        await expect(store.ping()).resolves.toBeUndefined();
      }));
  });
}
