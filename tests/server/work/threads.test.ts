import { afterAll, describe, expect, it } from 'vitest';
import { markPaper, marksCsv, paperFor, xapiStatements } from '../../../src/homework/index.ts';
import { classPapersPdf } from '../../../src/homework/print/index.ts';
import { ApiFailure } from '../../../src/server/problems.ts';
import { WorkThreads } from '../../../src/server/work/threads.ts';
import { JobEnded, type Work, workHere } from '../../../src/server/work/work.ts';
import { english } from '../../../src/words/en/core.ts';
import { places, seats, setOf } from '../../homework/course.ts';
import { codeFor } from '../../homework/print/class-to-print.ts';
import { withoutId } from '../../homework/print/read-pdf.ts';
import { answerWith, MORNING } from '../../support/answers.ts';

const set = setOf(places(['status-lamps', 'relay-chains'], 4));
const [seat] = seats(1);
const paper = { set, seat: seat!, taken: new Map() };
const nothing = { language: 'en', items: [] };
const record = answerWith({ id: 'a', at: MORNING, learner: 'me' });

const threads = new WorkThreads();
afterAll(() => threads.close());

/** How a job ended that wasn't done. */
const endOf = async (job: Promise<unknown>): Promise<string> => {
  try {
    await job;
  } catch (error) {
    if (error instanceof JobEnded) return error.why;
    if (error instanceof ApiFailure) return error.code;
    throw error;
  }
  return 'done';
};

describe('work in threads', () => {
  it('comes to the same as where it is asked for', async () => {
    const made = await threads.run('makePaper', paper, { owner: 'me' });
    expect(made).toEqual(paperFor(set, seat!));
    expect(await workHere.run('makePaper', paper, { owner: 'me' })).toEqual(made);
    const found = await threads.run(
      'lookAgain',
      { record, guarded: new Set<string>(), issued: null },
      { owner: 'me' },
    );
    expect(found).toEqual(
      await workHere.run('lookAgain', { record, guarded: new Set<string>(), issued: null }, { owner: 'me' }),
    );
  });

  it('fails as it fails where it is asked for', async () => {
    const broken = { set, seat: seat!, taken: null as never };
    await expect(threads.run('makePaper', broken, { owner: 'me' })).rejects.toThrow(/null/);
    expect(await threads.run('explainPaper', nothing, { owner: 'me' })).toEqual([]);
  });

  it('is done for those who wait in turns', async () => {
    const order: string[] = [];
    const one = (owner: string): Promise<unknown> =>
      threads.run('explainPaper', nothing, { owner }).then(() => order.push(owner));
    await Promise.all(['many', 'many', 'many', 'many', 'one', 'other'].map(one));
    // The first one begins at once, when nobody else is there yet.
    expect(order).toEqual(['many', 'many', 'one', 'other', 'many', 'many']);
  });

  it('is not begun, or goes no further, when nobody wants it any more', async () => {
    const gone = new AbortController();
    const running = threads.run('makePaper', paper, { owner: 'me', signal: gone.signal });
    const waiting = threads.run('makePaper', paper, { owner: 'me', signal: gone.signal });
    gone.abort();
    expect(await endOf(waiting)).toBe('not-wanted');
    expect(await endOf(running)).toBe('not-wanted');
    const late = threads.run('makePaper', paper, { owner: 'me', signal: gone.signal });
    expect(await endOf(late)).toBe('not-wanted');
    expect(await threads.run('explainPaper', nothing, { owner: 'me' })).toEqual([]);
  });

  it('that makes a file asks for what is in it piece by piece, and gives it so', async () => {
    const made = seats(3).map((each) => paperFor(set, each));
    const request = { language: 'en', set, className: 'Packers', closes: 'today', made: new Date(0) };
    const printed = made.flatMap((one, at) =>
      one.ok ? [{ name: `Name ${at}`, code: codeFor(at), paper: one.value }] : [],
    );
    const order: string[] = [];
    async function* feed() {
      for (const one of printed) {
        order.push(`asked for ${one.name}`);
        yield one;
      }
    }
    const fileBy = async (work: Work): Promise<string> => {
      const pieces: Uint8Array[] = [];
      const take = async (piece: Uint8Array): Promise<void> => {
        order.push('given a piece');
        pieces.push(piece);
      };
      await work.run('printPapers', request, { owner: 'me', feed: feed(), take });
      return withoutId(Buffer.concat(pieces));
    };
    const file = await fileBy(threads);
    expect(order.slice(0, 4)).toEqual([
      'asked for Name 0',
      'given a piece',
      'asked for Name 1',
      'given a piece',
    ]);
    expect(file).toBe(await fileBy(workHere));
    expect(file).toBe(withoutId(await classPapersPdf({ ...request, words: english, papers: printed })));
  });

  it('that makes a table or statements of marks does so piece by piece, as they are made whole', async () => {
    const made = paperFor(set, seat!);
    if (!made.ok) throw new Error('no paper');
    const mark = markPaper(made.value, new Map());
    const rows = ['=Ann', 'Bo', 'Cy'].map((name) => ({
      learner: name,
      name,
      mark: name === 'Bo' ? null : mark,
    }));
    const base = 'https://drawings.example';
    const uuids = new Map<number | 'paper', string>([['paper', 'the paper']]);
    for (const item of mark.items.keys()) uuids.set(item, `item ${item}`);
    const states = ['one', 'two'].map((name) => ({ mark, account: { homePage: base, name }, at: 5, uuids }));
    const order: string[] = [];
    async function* feed<T>(all: readonly T[]) {
      for (const [at, one] of all.entries()) {
        order.push(`asked for ${at}`);
        yield one;
      }
    }
    const fileOf = async (
      run: (manner: { owner: string; take: (piece: Uint8Array) => Promise<void> }) => Promise<unknown>,
    ): Promise<string> => {
      const pieces: Uint8Array[] = [];
      const take = async (piece: Uint8Array): Promise<void> => {
        order.push('given a piece');
        pieces.push(piece);
      };
      await run({ owner: 'me', take });
      return Buffer.concat(pieces).toString();
    };
    for (const work of [threads, workHere]) {
      order.length = 0;
      const table = await fileOf((manner) =>
        work.run('tableMarks', { set }, { ...manner, feed: feed(rows) }),
      );
      expect(order.slice(0, 4)).toEqual(['given a piece', 'asked for 0', 'given a piece', 'asked for 1']);
      expect(table).toBe(marksCsv(set, rows));
      const json = (all: typeof states) =>
        fileOf((manner) =>
          work.run('stateMarks', { language: 'en', set, base }, { ...manner, feed: feed(all) }),
        );
      expect(JSON.parse(await json(states))).toEqual(
        states.flatMap((paper) =>
          xapiStatements({ words: english, set, base, ...paper, uuidFor: (what) => uuids.get(what)! }),
        ),
      );
      expect(JSON.parse(await json([]))).toEqual([]);
    }
  });

  it('fails with what its source fails with, or whoever takes the file', async () => {
    const request = { language: 'en', set, className: 'Packers', closes: 'today', made: new Date(0) };
    async function* failing(): AsyncGenerator<never> {
      yield* [];
      throw new Error('the store is gone');
    }
    const take = () => Promise.reject(new Error('nobody reads on'));
    await expect(threads.run('printPapers', request, { owner: 'me', feed: failing() })).rejects.toThrow(
      'the store is gone',
    );
    async function* none(): AsyncGenerator<never> {
      yield* [];
    }
    await expect(threads.run('printPapers', request, { owner: 'me', feed: none(), take })).rejects.toThrow(
      'nobody reads on',
    );
  });

  it('that takes too long is ended; what comes after it is done', async () => {
    // Only the one: even a job that has nothing to do may take longer than a millisecond on a busy machine.
    const impatient = new WorkThreads({ makePaper: 1 });
    const large = { ...paper, set: setOf(places(['relay-chains'], 40)) };
    expect(await endOf(impatient.run('makePaper', large, { owner: 'me' }))).toBe('too-long');
    expect(await impatient.run('explainPaper', nothing, { owner: 'me' })).toEqual([]);
    await impatient.close();
  });

  it('waits only so much, of one owner and of everybody', async () => {
    const own = new WorkThreads();
    const ends = Array.from({ length: 2_002 }, () =>
      endOf(own.run('explainPaper', nothing, { owner: 'me' })),
    );
    expect(await ends.at(-1)).toBe('too-busy');
    const other = own.run('explainPaper', nothing, { owner: 'other' });
    expect(await other).toEqual([]);
    await own.close();
    expect(new Set(await Promise.all(ends))).toEqual(new Set(['done', 'closing', 'too-busy']));
    expect(await endOf(own.run('explainPaper', nothing, { owner: 'me' }))).toBe('closing');
  });
});
