/** What is issued, what proves something, and which circuits somebody has seen, run over each database. */
import { sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import type { AnswerRecord } from '../../shared/practice.ts';
import { openStore, type Store, type StorePlace } from '../../src/store/index.ts';
import type { Proof } from '../../src/store/types.ts';
import { answerWith, DAY, MORNING } from '../support/answers.ts';
import type { Database } from './store-contract.ts';

export function proofsContract(name: string, database: Database): void {
  describe(`proofs in a store on ${name}`, () => {
    let now = MORNING;
    const inStore = async (use: (store: Store, place: StorePlace) => Promise<void>): Promise<void> => {
      now = MORNING;
      const place = await database.fresh();
      const store = await openStore(place, { now: () => now });
      try {
        await use(store, place);
      } finally {
        await store.close();
      }
    };
    const keep = (store: Store, proofs: readonly (readonly [AnswerRecord, Proof | null])[]) =>
      store.keepAnswers(
        proofs.map(([record]) => record),
        new Map(),
        new Map(proofs.flatMap(([record, proof]) => (proof ? [[record, proof] as const] : []))),
      );

    const twoPeople = async ({ people: { persons } }: Store): Promise<readonly [string, string]> => {
      const [one, other] = [
        await persons.make({ name: 'Fern', role: 'learner' }),
        await persons.make({ name: 'Moss', role: 'learner' }),
      ];
      return [one!.id, other!.id];
    };

    it('issue questions that wait thirty days for their answer, each learner’s own', () =>
      inStore(async (store) => {
        const { issued } = store;
        const [me, somebody] = await twoPeople(store);
        const first = await issued.issue(me, [
          { skill: 'changeover', reviews: 1 },
          { skill: 'seal-in', reviews: 0 },
          { skill: 'changeover', reviews: 2 },
        ]);
        expect(first.map(({ skill, reviews, issuedAt, until }) => [skill, reviews, issuedAt, until])).toEqual(
          [
            ['changeover', 1, now, now + 30 * DAY],
            ['seal-in', 0, now, now + 30 * DAY],
            ['changeover', 2, now, now + 30 * DAY],
          ],
        );
        const [other] = await issued.issue(somebody, [{ skill: 'changeover', reviews: 0 }]);
        expect(new Set([...first, other!].map(({ id }) => id)).size).toBe(4);
        expect(await issued.waiting(me)).toEqual(
          new Map([
            ['changeover', 2],
            ['seal-in', 1],
          ]),
        );
        expect(await issued.find(me, [first[1]!.id, other!.id, 'none'])).toEqual(
          new Map([[first[1]!.id, first[1]]]),
        );
        now += 10 * DAY;
        const [later] = await issued.issue(me, [{ skill: 'changeover', reviews: 0 }]);
        const byId = [...first].sort((one, two) => (one.id < two.id ? -1 : 1));
        expect(await issued.all(me)).toEqual([...byId, later]);
        now = MORNING + 30 * DAY - 1;
        expect((await issued.waiting(me)).get('changeover')).toBe(3);
        now += 1;
        expect(await issued.waiting(me)).toEqual(new Map([['changeover', 1]]));
        expect(await issued.find(me, [first[0]!.id])).toEqual(new Map());
        // Those that nobody answered in time go when the next ones are issued; others’ stay until theirs are.
        await issued.issue(me, []);
        expect(await issued.all(me)).toEqual([later]);
        expect(await issued.all(somebody)).toEqual([other]);
      }));

    it('use up an issued question with the first answer to it, and only their own', () =>
      inStore(async (store) => {
        const { issued } = store;
        const [me, somebody] = await twoPeople(store);
        const [mine, others] = [
          (await issued.issue(me, [{ skill: 'changeover', reviews: 0 }]))[0]!,
          (await issued.issue(somebody, [{ skill: 'changeover', reviews: 0 }]))[0]!,
        ];
        const [one, two, three, four] = ['one', 'two', 'three', 'four'].map((id, at) =>
          answerWith({ id, at: MORNING + at, learner: me }),
        );
        const by = (id: string): Proof => ({ source: 'issued', at: MORNING + 60_000, issued: id });
        await keep(store, [
          [one!, by(mine.id)],
          [two!, by(mine.id)],
          [three!, by(others.id)],
          [four!, null],
        ]);
        expect((await store.proofsOf(me)).map(({ id, at, source }) => [id, at, source])).toEqual([
          ['one', MORNING + 60_000, 'issued'],
        ]);
        expect(await issued.all(me)).toEqual([]);
        expect(await issued.all(somebody)).toEqual([others]);
      }));

    it('give the answers that prove something on some circuits, as they count, in the order in which they came', () =>
      inStore(async (store, place) => {
        const proof: Proof = { source: 'homework', at: MORNING + 60_000 };
        const answers = ['a', 'b', 'c', 'd', 'e'].map((id, at) =>
          answerWith({ id, at: MORNING + at, circuit: `circuit ${id}` }),
        );
        await keep(
          store,
          answers.map((answer, at) => [answer, at === 1 ? null : proof] as const),
        );
        await keep(store, [
          [answerWith({ id: 'f', at: MORNING, circuit: 'circuit a', learner: 'other' }), proof],
        ]);
        const wrong = answerWith({ id: 'x', at: 0, share: 0 }).mark;
        await store.correctMarks((record) => (record.id === 'c' ? wrong : record.mark));
        const db = database.tables(place);
        await sql`update answers set record_json = '{' where id = 'd'`.execute(db);
        await sql`update answers set proof_at = null where id = 'e'`.execute(db);
        await db.destroy();
        // Those asked for twice come once; the one that can't be read is left out.
        const wanted = ['e', 'c', 'b', 'd', 'a', 'c'].map((id) => `circuit ${id}`);
        const found = await store.provingAnswersOf('me', [...wanted, ...Array(200).fill('none')]);
        expect(found.map(({ record, source }) => [record.id, record.at, record.circuit, source])).toEqual([
          ['a', MORNING + 60_000, 'circuit a', 'homework'],
          ['c', MORNING + 60_000, 'circuit c', 'homework'],
          // Without a moment of its own it counts when the answer does: not later than it came.
          ['e', now, 'circuit e', 'homework'],
        ]);
        expect(found.map(({ record }) => record.mark.share)).toEqual([1, 0, 1]);
        expect(found[1]!.record.attempt.share).toBe(0);
        const lines = await store.proofsOf('me');
        expect(lines.map(({ id }) => id)).toEqual(['a', 'c', 'd', 'e']);
        expect(lines.map(({ at }) => at - MORNING)).toEqual([
          60_000,
          60_000,
          60_000,
          found[2]!.record.at - MORNING,
        ]);
      }));

    it('know the circuits that somebody has answered, each once', () =>
      inStore(async (store) => {
        const on = (id: string, circuit: string, learner = 'me') =>
          answerWith({ id, at: MORNING, circuit, learner });
        await store.keepAnswers([on('a', 'one'), on('b', 'one'), on('c', 'two'), on('d', 'three', 'other')]);
        expect(await store.circuitsSeenBy('me')).toEqual(new Set(['one', 'two']));
        expect(await store.circuitsSeenBy('nobody')).toEqual(new Set());
      }));

    it('tell how far a check has come, learner by learner', () =>
      inStore(async (store) => {
        await store.keepAnswers(
          ['a', 'b', 'c'].map((learner) => answerWith({ id: 'one', at: MORNING, learner })),
        );
        const told: string[] = [];
        expect(await store.check((done, all) => told.push(`${done} of ${all}`))).toEqual([]);
        expect(told).toEqual(['1 of 3', '2 of 3', '3 of 3']);
      }));
  });
}
