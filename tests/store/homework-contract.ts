/** What any store does with homework, run over each database. */

import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { learnerExport } from '../../shared/api.ts';
import type { HomeworkSet, Paper } from '../../shared/homework.ts';
import { homeworkWish } from '../../shared/homework-views.ts';
import { markFromShort, markPaper, papersFor, totalOf } from '../../src/homework/index.ts';
import { blankAnswer, rightAnswer } from '../../src/questions/index.ts';
import type { HomeworkStore, KeptSet, NewSave, Store } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { CLOSES, HOUR, OPENS, places, seats, setOf } from '../homework/course.ts';

export interface Opened {
  /** One store, opened once or several times. */
  readonly stores: readonly Store[];
  close(): Promise<void>;
}
/** Opens a store in which there is nothing yet. */
export type Opening = (now: () => number) => Promise<Opened>;

const SET = setOf(places(['make-contact', 'status-lamps'], 3));
const PAPERS: readonly Paper[] = (() => {
  const made = papersFor(SET, seats(3));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
})();

const wish = homeworkWish.parse({
  title: SET.title,
  skills: ['make-contact', 'status-lamps'],
  items: 3,
  opensAt: OPENS,
  closesAt: CLOSES,
});

const drafted = (homework: HomeworkStore, changes: Partial<HomeworkSet> = {}): Promise<KeptSet> =>
  homework.draft({ set: { ...SET, ...changes }, wish, class: 'packers', madeBy: 'tutor' });

const issued = async (homework: HomeworkStore, changes: Partial<HomeworkSet> = {}): Promise<KeptSet> => {
  const { set } = await drafted(homework, changes);
  return (await homework.issue(set.id))!;
};

/** A paper as others, on circuits of these names. */
const onCircuits = (learner: string, circuits: readonly string[]): Paper => ({
  ...PAPERS[0]!,
  learner,
  items: circuits.map((circuit, at) => ({ ...PAPERS[0]!.items[at % 3]!, circuit })),
});

const kept = async (homework: HomeworkStore, paper = PAPERS[0]!, id = 'p1'): Promise<string> => {
  expect(await homework.keepPaper({ id, code: `CODE-${id}`, paper })).toMatchObject({ result: 'made' });
  await homework.begin(id);
  return id;
};

const answerTo = (item: number, id: string, right = true): NewSave => {
  const { question } = PAPERS[0]!.items[item]!;
  return { id, item, answer: right ? rightAnswer(question) : blankAnswer(question), secondsUsed: 12 };
};

export function homeworkContract(opening: Opening): void {
  const clock = { now: OPENS };
  const inStore = async (use: (homework: HomeworkStore, opened: Opened) => Promise<void>): Promise<void> => {
    clock.now = OPENS + HOUR;
    const opened = await opening(() => clock.now);
    try {
      await use(opened.stores[0]!.homework, opened);
    } finally {
      await opened.close();
    }
  };

  it('keeps drafts, lets them be changed until they are issued, and issues once', () =>
    inStore(async (homework) => {
      const { set } = await drafted(homework);
      expect(await homework.set(set.id)).toMatchObject({ set: SET, issuedAt: null, madeBy: 'tutor' });
      const other = { ...SET, title: 'Week 41' };
      expect(await homework.changeDraft(other, { ...wish, title: 'Week 41' })).toBe(true);
      expect((await homework.issue(set.id))?.issuedAt).toBe(OPENS + HOUR);
      clock.now += HOUR;
      expect((await homework.issue(set.id))?.issuedAt).toBe(OPENS + HOUR);
      expect(await homework.changeDraft(SET, wish)).toBe(false);
      expect(await homework.set(set.id)).toMatchObject({ set: other, wish: { title: 'Week 41' } });
      expect(await homework.issue('none')).toBeNull();
      expect(await homework.set('none')).toBeNull();
    }));

  it('lets an issued set close later, as long as it has not closed, and never earlier', () =>
    inStore(async (homework) => {
      const { set } = await drafted(homework);
      expect(await homework.closeLater(set.id, set.closesAt + HOUR)).toBe(false);
      await homework.issue(set.id);
      const moves = await Promise.all(
        [3, 1, 2].map((hours) => homework.closeLater(set.id, set.closesAt + hours * HOUR)),
      );
      expect(moves).toContain(true);
      const kept = (await homework.set(set.id))!;
      expect(kept.set).toEqual({ ...SET, closesAt: set.closesAt + 3 * HOUR });
      expect(kept.wish.closesAt).toBe(kept.set.closesAt);
      expect(await homework.closeLater(set.id, set.closesAt)).toBe(false);
      clock.now = kept.set.closesAt;
      expect(await homework.closeLater(set.id, kept.set.closesAt + HOUR)).toBe(false);
      expect(await homework.closeLater('none', kept.set.closesAt + HOUR)).toBe(false);
    }));

  it('gives the sets of classes, the newest first', () =>
    inStore(async (homework) => {
      for (const id of ['one', 'two', 'three']) {
        await drafted(homework, { id });
        clock.now += 1;
      }
      const found = await homework.setsOf(['others', 'packers']);
      expect(found.map(({ set }) => set.id)).toEqual(['three', 'two', 'one']);
      expect(await homework.setsOf(['others'])).toEqual([]);
      expect(await homework.setsOf([])).toEqual([]);
    }));

  it('erases a draft and withdraws what was issued, with all that was done kept', () =>
    inStore(async (homework) => {
      await drafted(homework);
      expect(await homework.withdraw(SET.id)).toBe('erased');
      expect(await homework.set(SET.id)).toBeNull();
      await issued(homework);
      await kept(homework);
      expect(await homework.withdraw(SET.id)).toBe('withdrawn');
      clock.now += 5;
      expect(await homework.withdraw(SET.id)).toBe('withdrawn');
      expect(await homework.set(SET.id)).toMatchObject({ withdrawnAt: OPENS + HOUR });
      expect(await homework.issue(SET.id)).toBeNull();
      expect(await homework.papersIn([SET.id])).toHaveLength(1);
      expect(await homework.withdraw('none')).toBeNull();
    }));

  it('keeps a paper whole, once for each learner and attempt, and finds it by its code', () =>
    inStore(async (homework) => {
      await issued(homework);
      const [paper, other] = PAPERS;
      expect(await homework.keepPaper({ id: 'p1', code: 'A', paper: paper! })).toMatchObject({
        result: 'made',
        head: { id: 'p1', code: 'A', begunAt: null, saves: 0, short: null },
      });
      expect((await homework.paper('p1'))?.paper).toEqual(paper);
      const again = { ...onCircuits(paper!.learner, ['x', 'y', 'z']) };
      expect(await homework.keepPaper({ id: 'p2', code: 'B', paper: again })).toMatchObject({
        result: 'already',
        head: { id: 'p1' },
      });
      expect(await homework.keepPaper({ id: 'p3', code: 'A', paper: other! })).toEqual({
        result: 'code-taken',
      });
      expect(await homework.paperByCode(SET.id, 'A')).toMatchObject({ id: 'p1' });
      expect(await homework.paperByCode('another', 'A')).toBeNull();
      expect(await homework.paper('p2')).toBeNull();
      expect((await homework.papersOf(paper!.learner)).map(({ id }) => id)).toEqual(['p1']);
    }));

  it('never keeps one circuit twice in a place, and nothing of a paper that has one', () =>
    inStore(async (homework) => {
      await issued(homework);
      await kept(homework, onCircuits('fern', ['a', 'b', 'c']));
      const clash = onCircuits('moss', ['d', 'b', 'e']);
      expect(await homework.keepPaper({ id: 'p2', code: 'B', paper: clash })).toEqual({
        result: 'circuit-taken',
      });
      expect(await homework.paper('p2')).toBeNull();
      const free = onCircuits('moss', ['b', 'd', 'e']);
      expect(await homework.keepPaper({ id: 'p2', code: 'B', paper: free })).toMatchObject({
        result: 'made',
      });
      expect(await homework.circuitsIn(SET.id)).toEqual(
        new Map([
          [0, new Set(['a', 'b'])],
          [1, new Set(['b', 'd'])],
          [2, new Set(['c', 'e'])],
        ]),
      );
    }));

  it('gives no two learners one circuit in a place when several make papers at once', () =>
    inStore(async (homework, { stores }) => {
      let run = 0;
      const wanted = fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }), {
        minLength: 2,
        maxLength: 8,
      });
      await fc.assert(
        fc.asyncProperty(wanted, async (learners) => {
          const id = `set-${++run}`;
          await issued(homework, { id });
          // Everybody begins at the same circuits and goes on to the next ones where they are taken.
          await Promise.all(
            learners.map(async (first, at) => {
              const own = stores[at % stores.length]!.homework;
              for (let next = 0; ; next++) {
                const circuits = first.map((start) => `c${start + next}`);
                const paper = { ...onCircuits(`learner-${at}`, circuits), set: id };
                const { result } = await own.keepPaper({ id: `${id}-${at}`, code: `${id}-${at}`, paper });
                if (result !== 'circuit-taken') return;
              }
            }),
          );
          const heads = await homework.papersIn([id]);
          expect(heads).toHaveLength(learners.length);
          const papers = await Promise.all(heads.map((head) => homework.paper(head.id)));
          for (let place = 0; place < 3; place++)
            expect(new Set(papers.map((each) => each!.paper.items[place]!.circuit)).size).toBe(
              learners.length,
            );
        }),
        { numRuns: 15 },
      );
    }));

  it('makes one paper for a learner who begins on two devices at once', () =>
    inStore(async (homework, { stores }) => {
      await issued(homework);
      const results = await Promise.all(
        Array.from({ length: 12 }, (_, at) =>
          stores[at % stores.length]!.homework.keepPaper({
            id: `p${at}`,
            code: `C${at}`,
            paper: onCircuits('fern', [`a${at}`, `b${at}`, `c${at}`]),
          }),
        ),
      );
      const heads = await homework.papersIn([SET.id]);
      expect(heads).toHaveLength(1);
      for (const result of results) expect(result).toMatchObject({ head: { id: heads[0]!.id } });
      expect([...(await homework.circuitsIn(SET.id)).values()].map(({ size }) => size)).toEqual([1, 1, 1]);
    }));

  it('notes once when a paper was begun', () =>
    inStore(async (homework) => {
      await issued(homework);
      await kept(homework);
      clock.now += HOUR;
      expect(await homework.begin('p1')).toBe(OPENS + HOUR);
      expect(await homework.paper('p1')).toMatchObject({ begunAt: OPENS + HOUR });
    }));

  it('saves answers in order and each once, also those sent again', () =>
    inStore(async (homework) => {
      await issued(homework);
      const paper = await kept(homework);
      const [one, two, three] = [answerTo(0, 'a'), answerTo(1, 'b', false), answerTo(1, 'c')];
      expect(await homework.save(paper, [one, two])).toEqual({
        result: 'saved',
        at: clock.now,
        kept: [
          { kept: true, number: 1 },
          { kept: true, number: 2 },
        ],
      });
      clock.now += 1000;
      expect(await homework.save(paper, [two, three, three])).toMatchObject({
        kept: [
          { kept: false, number: 2 },
          { kept: true, number: 3 },
          { kept: false, number: 3 },
        ],
      });
      const saved = await homework.answersOf(paper);
      expect(saved.map(({ id, number, item }) => [id, number, item])).toEqual([
        ['a', 1, 0],
        ['b', 2, 1],
        ['c', 3, 1],
      ]);
      expect(saved[2]).toMatchObject({ answer: three.answer, secondsUsed: 12, at: clock.now, hint: false });
      expect(await homework.itemsSaved(SET.id)).toEqual(new Map([[paper, 2]]));
    }));

  it('numbers without gaps when several devices and servers save on one paper at once', () =>
    inStore(async (homework, { stores }) => {
      await issued(homework);
      const paper = await kept(homework);
      // Each answer is sent twice, by two of them.
      const ids = Array.from({ length: 30 }, (_, at) => `a${at}`);
      const results = await Promise.all(
        [...ids, ...ids].map((id, at) =>
          stores[at % stores.length]!.homework.save(paper, [answerTo(at % 3, id)]),
        ),
      );
      const told = results.flatMap((result) => (result.result === 'saved' ? result.kept : []));
      expect(told.filter((one) => one.kept)).toHaveLength(30);
      const saved = await homework.answersOf(paper);
      expect(saved.map(({ number }) => number)).toEqual(ids.map((_, at) => at + 1));
      expect(new Set(saved.map(({ id }) => id))).toEqual(new Set(ids));
    }));

  it('takes nothing at closing time or later, and still knows what it has', () =>
    inStore(async (homework) => {
      await issued(homework);
      const paper = await kept(homework);
      clock.now = CLOSES - 1;
      expect(await homework.save(paper, [answerTo(0, 'a')])).toMatchObject({ result: 'saved' });
      clock.now = CLOSES;
      expect(await homework.save(paper, [answerTo(1, 'b')])).toEqual({ result: 'closed' });
      expect(await homework.save(paper, [answerTo(0, 'a')])).toMatchObject({
        kept: [{ kept: false, number: 1 }],
      });
      expect(await homework.submit(paper)).toEqual({ result: 'closed' });
      expect(await homework.hint(paper, 0)).toBe('closed');
      expect(await homework.answersOf(paper)).toHaveLength(1);
    }));

  it('keeps the order of saving when its clock is set back, and a marked paper closed', () =>
    inStore(async (homework) => {
      await issued(homework);
      const paper = await kept(homework);
      await homework.save(paper, [answerTo(0, 'a', false)]);
      const first = clock.now;
      clock.now -= HOUR;
      expect(await homework.save(paper, [answerTo(0, 'b')])).toMatchObject({ at: first });
      const whole = (await homework.paper(paper))!;
      expect(await homework.mark(whole, markPaper(whole.paper, new Map()))).toBe(true);
      expect(await homework.save(paper, [answerTo(0, 'c')])).toEqual({ result: 'closed' });
      expect(await homework.submit(paper)).toEqual({ result: 'closed' });
    }));

  it('hands a paper in once, takes nothing afterwards, and says when it was', () =>
    inStore(async (homework, { stores }) => {
      await issued(homework);
      const paper = await kept(homework);
      await homework.save(paper, [answerTo(0, 'a')]);
      const results = await Promise.all(
        Array.from({ length: 10 }, (_, at) => stores[at % stores.length]!.homework.submit(paper)),
      );
      expect(results.filter(({ result }) => result === 'submitted')).toHaveLength(1);
      expect(results.filter(({ result }) => result === 'already')).toHaveLength(9);
      clock.now = CLOSES + HOUR;
      expect(await homework.submit(paper)).toEqual({ result: 'already', submittedAt: OPENS + HOUR });
      clock.now = OPENS + 2 * HOUR;
      expect(await homework.save(paper, [answerTo(0, 'b')])).toEqual({ result: 'submitted' });
      expect(await homework.hint(paper, 0)).toBe('submitted');
    }));

  it('notes hints, which count for the answers of their item whenever those were saved', () =>
    inStore(async (homework) => {
      await issued(homework);
      const paper = await kept(homework);
      await homework.save(paper, [answerTo(0, 'a'), answerTo(1, 'b')]);
      expect(await homework.hint(paper, 1)).toBe('noted');
      expect(await homework.hint(paper, 1)).toBe('noted');
      expect(await homework.hintsOf(paper)).toEqual([1]);
      expect((await homework.answersOf(paper)).map(({ hint }) => hint)).toEqual([false, true]);
    }));

  it('marks once, and not from fewer answers than there are', () =>
    inStore(async (homework) => {
      await issued(homework);
      const paper = await kept(homework);
      const early = (await homework.paper(paper))!;
      const blank = markPaper(early.paper, new Map());
      await homework.save(paper, [answerTo(0, 'a')]);
      expect(await homework.mark(early, blank)).toBe(false);
      const now = (await homework.paper(paper))!;
      const saved = new Map((await homework.answersOf(paper)).map((answer) => [answer.item, answer]));
      const given = markPaper(now.paper, saved);
      expect(await homework.mark(now, given)).toBe(true);
      expect(await homework.mark(now, blank)).toBe(false);
      expect(await homework.markOf(paper)).toEqual(given);
      const head = (await homework.papersIn([SET.id]))[0]!;
      expect(head).toMatchObject({ markedAt: clock.now, rememberedAt: null });
      expect(totalOf(markFromShort(SET, head, head.short!))).toEqual(totalOf(given));
      clock.now += 5;
      await homework.remembered(paper);
      clock.now += 5;
      await homework.remembered(paper);
      expect(await homework.paper(paper)).toMatchObject({ rememberedAt: OPENS + HOUR + 5 });
    }));

  it('adds overrides in order beside the first mark, from several tutors at once, and the lists follow', () =>
    inStore(async (homework, { stores }) => {
      await issued(homework);
      const paper = await kept(homework);
      const by = (earned: number, tutor = 'tutor') => ({
        earned,
        reason: 'seen on the drawing',
        by: tutor,
        at: clock.now,
      });
      expect(await homework.override(paper, [{ item: 0, override: by(1) }])).toBe(false);
      const whole = (await homework.paper(paper))!;
      const given = markPaper(whole.paper, new Map());
      await homework.mark(whole, given);
      await Promise.all(
        Array.from({ length: 8 }, (_, at) =>
          stores[at % stores.length]!.homework.override(paper, [{ item: 1, override: by(1, `t${at}`) }]),
        ),
      );
      expect(
        await homework.override(
          paper,
          [0, 1].map((item) => ({ item, override: by(2) })),
        ),
      ).toBe(true);
      const mark = (await homework.markOf(paper))!;
      expect(mark.items.map(({ overrides }) => overrides.length)).toEqual([1, 9, 0]);
      // Somebody who looked before the last one came, and somebody who has seen it.
      const late = { item: 0, override: by(1, 'late'), known: 0 };
      expect(await homework.override(paper, [{ item: 2, override: by(1, 'late') }, late])).toBe('changed');
      expect((await homework.markOf(paper))!.items).toEqual(mark.items);
      expect(mark.items.map(({ mark: first }) => first)).toEqual(given.items.map(({ mark: first }) => first));
      const head = (await homework.papersIn([SET.id]))[0]!;
      expect(totalOf(markFromShort(SET, head, head.short!)).earned).toBe(4);
      expect(head.short!.map(([, , overrides]) => overrides)).toEqual([1, 9, 0]);
    }));

  it('hands in and marks a paper whose marks were typed, and leaves an earlier mark as it was', () =>
    inStore(async (homework) => {
      await issued(homework);
      clock.now = CLOSES + HOUR;
      const paper = await kept(homework);
      const whole = (await homework.paper(paper))!;
      const blank = markPaper(whole.paper, new Map());
      const typed = [{ item: 2, override: { earned: 2, reason: 'on paper', by: 'tutor', at: clock.now } }];
      await homework.typed(paper, blank, typed);
      expect(await homework.paper(paper)).toMatchObject({ submittedAt: clock.now, markedAt: clock.now });
      const other = { ...blank, items: blank.items.map((item) => ({ ...item, hint: true })) };
      await homework.typed(paper, other, typed);
      const mark = (await homework.markOf(paper))!;
      expect(mark.items.map(({ hint, overrides }) => [hint, overrides.length])).toEqual([
        [false, 0],
        [false, 0],
        [false, 2],
      ]);
    }));

  it('erases a person’s papers with everything in them, and no one else’s', () =>
    inStore(async (homework, { stores: [store] }) => {
      await issued(homework);
      const learners = [PAPERS[0]!.learner, PAPERS[1]!.learner];
      for (const [at, learner] of learners.entries()) {
        const id = await kept(homework, PAPERS[at]!, `p${at}`);
        await homework.save(id, [
          { ...answerTo(0, 'a'), answer: blankAnswer(PAPERS[at]!.items[0]!.question) },
        ]);
        await homework.hint(id, 0);
        const whole = (await homework.paper(id))!;
        await homework.mark(whole, markPaper(whole.paper, new Map()));
        const override = { earned: 0, reason: `about ${learner}`, by: 'tutor', at: clock.now };
        await homework.override(id, [{ item: 0, override }]);
      }
      await store!.erase(learners[0]!);
      expect(await homework.paper('p0')).toBeNull();
      expect(await homework.answersOf('p0')).toEqual([]);
      expect(await homework.hintsOf('p0')).toEqual([]);
      expect(await homework.markOf('p0')).toBeNull();
      expect((await homework.papersIn([SET.id])).map(({ id }) => id)).toEqual(['p1']);
      expect((await homework.circuitsIn(SET.id)).get(0)).toEqual(new Set([PAPERS[1]!.items[0]!.circuit]));
      expect((await homework.markOf('p1'))?.items[0]?.overrides).toHaveLength(1);
      expect(await homework.answersOf('p1')).toHaveLength(1);
      await store!.eraseClass('packers');
      expect(await homework.set(SET.id)).toBeNull();
      expect(await homework.papersOf(learners[1]!)).toEqual([]);
      expect(await homework.answersOf('p1')).toEqual([]);
      expect(await homework.circuitsIn(SET.id)).toEqual(new Map());
    }));

  it('finds the papers that a learner may still hand in: of sets that are issued and not withdrawn', () =>
    inStore(async (homework) => {
      for (const id of ['drawn-up', 'issued', 'withdrawn', 'handed-in', 'marked']) {
        await drafted(homework, { id });
        const paper = { ...onCircuits(PAPERS[0]!.learner, ['a', 'b', 'c']), set: id };
        await homework.keepPaper({ id: `paper ${id}`, code: id, paper });
        if (id !== 'drawn-up') await homework.issue(id);
      }
      await homework.withdraw('withdrawn');
      await homework.submit('paper handed-in');
      const whole = (await homework.paper('paper marked'))!;
      await homework.mark(whole, markPaper(whole.paper, new Map()));
      const found = await homework.unsubmittedOf(PAPERS[0]!.learner);
      expect(found.map(({ paper, kept: { set } }) => [paper.id, paper.begunAt, set.id])).toEqual([
        ['paper issued', null, 'issued'],
      ]);
      expect(await homework.unsubmittedOf(PAPERS[1]!.learner)).toEqual([]);
      expect(await homework.head('paper issued')).toEqual(found[0]!.paper);
      expect(await homework.head('none')).toBeNull();
    }));

  it('notes what was tried elsewhere, by paper, item and place, with how often and when', () =>
    inStore(async (homework) => {
      await issued(homework);
      const paper = await kept(homework);
      const other = await kept(homework, PAPERS[1]!, 'p2');
      await kept(homework, PAPERS[2]!, 'p3');
      const first = clock.now;
      await homework.triedElsewhere(paper, 1, 'write');
      clock.now += 1000;
      await homework.triedElsewhere(paper, 1, 'practice');
      await homework.triedElsewhere(paper, 0, 'try-it');
      await homework.triedElsewhere(other, 0, 'try-it');
      clock.now += 1000;
      await homework.triedElsewhere(paper, 1, 'write');
      const at = { firstAt: first + 1000, lastAt: first + 1000, times: 1 };
      expect(await homework.triedIn([paper, other, 'p3', 'none'])).toEqual(
        new Map([
          [
            paper,
            [
              { item: 0, place: 'try-it', ...at },
              { item: 1, place: 'write', firstAt: first, lastAt: first + 2000, times: 2 },
              { item: 1, place: 'practice', ...at },
            ],
          ],
          [other, [{ item: 0, place: 'try-it', ...at }]],
        ]),
      );
      expect(await homework.triedIn([])).toEqual(new Map());
    }));

  it('counts of how many items something was saved, on one paper and by paper', () =>
    inStore(async (homework) => {
      await issued(homework);
      const paper = await kept(homework);
      const other = await kept(homework, PAPERS[1]!, 'p2');
      expect(await homework.itemsSavedOn(paper)).toBe(0);
      await homework.save(paper, [answerTo(0, 'a'), answerTo(0, 'b'), answerTo(2, 'c')]);
      await homework.save(other, [answerTo(1, 'a')]);
      expect(await homework.itemsSavedOn(paper)).toBe(2);
      expect(await homework.itemsSavedOn(other)).toBe(1);
      expect(await homework.itemsSaved(SET.id)).toEqual(
        new Map([
          [paper, 2],
          [other, 1],
        ]),
      );
    }));

  it('exports a learner’s papers without a mark until it may be looked at', () =>
    inStore(async (homework, { stores: [store] }) => {
      await issued(homework);
      const paper = await kept(homework);
      await kept(homework, PAPERS[1]!, 'p2');
      await homework.keepPaper({
        id: 'p3',
        code: 'P3',
        paper: { ...onCircuits(PAPERS[0]!.learner, ['k', 'l', 'm']), attempt: 2 },
      });
      await homework.save(paper, [answerTo(0, 'a')]);
      await homework.submit(paper);
      const whole = (await homework.paper(paper))!;
      await homework.mark(whole, markPaper(whole.paper, new Map()));
      const exported = async () => {
        let text = '';
        for await (const piece of store!.exportOf(PAPERS[0]!.learner, english)) text += piece;
        return { text, value: learnerExport.parse(JSON.parse(text)) };
      };
      const before = await exported();
      expect(before.value.papers).toMatchObject([{ answers: [{ id: 'a', item: 0 }], mark: null }]);
      expect(before.text).not.toContain(PAPERS[0]!.items[0]!.question.seed!);
      clock.now = CLOSES;
      expect((await exported()).value.papers[0]?.mark?.items).toHaveLength(3);
    }));
}
