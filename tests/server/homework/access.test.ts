/** Who may see which set and which paper; what isn't somebody's to see looks as if it weren't there. */
import { describe, expect, it } from 'vitest';
import type { PersonRole } from '../../../shared/people.ts';
import { fingerprint } from '../../../src/generator/index.ts';
import {
  checkIssued,
  checkTutor,
  learnersSet,
  ownPaper,
  tutorsPaper,
  tutorsSet,
  wholePaper,
  workingPaper,
} from '../../../src/server/homework/access.ts';
import type { Desk } from '../../../src/server/homework/desk.ts';
import { Guard } from '../../../src/server/homework/guard.ts';
import type { Asking } from '../../../src/server/people/gate.ts';
import type { KeptSet, PaperHead, Store } from '../../../src/store/index.ts';
import { answerWith } from '../../support/answers.ts';
import { outcome } from '../people/asked.ts';

const [OPENS, CLOSES] = [1000, 2000];
const set = (id: string, changes: Partial<KeptSet> = {}): KeptSet =>
  ({
    set: { id, opensAt: OPENS, closesAt: CLOSES },
    class: 'c-own',
    issuedAt: 5,
    withdrawnAt: null,
    ...changes,
  }) as KeptSet;
const head = (id: string, of: string, changes: Partial<PaperHead> = {}): PaperHead =>
  ({ id, set: of, learner: 'lea', begunAt: 7, submittedAt: null, ...changes }) as PaperHead;

const SETS: Readonly<Record<string, KeptSet>> = {
  issued: set('issued'),
  draft: set('draft', { issuedAt: null }),
  withdrawn: set('withdrawn', { withdrawnAt: 9 }),
  other: set('other', { class: 'c-other' }),
};
const PAPERS: Readonly<Record<string, PaperHead>> = {
  begun: head('begun', 'issued'),
  made: head('made', 'issued', { begunAt: null }),
  withdrawn: head('withdrawn', 'withdrawn'),
  foreign: head('foreign', 'other', { learner: 'lars' }),
  left: head('left', 'other'),
  orphan: head('orphan', 'gone'),
};
/** Lea learns and Tom teaches in the one class; in the other there are Lars and Tilda. */
const MANNERS: Readonly<Record<string, string>> = {
  'c-own tom': 'tutor',
  'c-own lea': 'learner',
  'c-other tilda': 'tutor',
  'c-other lars': 'learner',
};
const QUESTION = answerWith({ id: 'any', at: 0, learner: 'lea' }).question;
const CIRCUIT = fingerprint(QUESTION.circuit);
const tried: unknown[] = [];
const asked: string[] = [];
const store = {
  homework: {
    set: async (id: string) => SETS[id] ?? null,
    head: async (id: string) => PAPERS[id] ?? null,
    paper: async (id: string) => {
      asked.push(id);
      const kept = PAPERS[id];
      return kept ? { ...kept, paper: { items: [{ question: QUESTION }] } } : null;
    },
    unsubmittedOf: async (learner: string) =>
      Object.values(PAPERS)
        .filter((paper) => paper.learner === learner && SETS[paper.set])
        .map((paper) => ({ paper, kept: SETS[paper.set]! })),
    triedElsewhere: async (...all: unknown[]) => {
      tried.push(all);
    },
  },
  people: {
    classes: {
      mannerOf: async (id: string, person: string) => MANNERS[`${id} ${person}`] ?? null,
      get: async (id: string) => (['c-own', 'c-other'].includes(id) ? { id } : null),
    },
  },
} as unknown as Store;
const desk = { store } as Desk;
const as = (id: string, role: PersonRole): Asking => ({ id, role, session: null });
const [lea, lars] = [as('lea', 'learner'), as('lars', 'learner')];
const [tom, tilda, ada] = [as('tom', 'tutor'), as('tilda', 'tutor'), as('ada', 'admin')];

describe('a set', () => {
  it('is there for the tutor of its class and for an administrator, draft or not', async () => {
    for (const who of [tom, ada])
      for (const id of ['issued', 'draft', 'withdrawn'])
        expect(await tutorsSet(desk, who, id)).toBe(SETS[id]);
  });

  it('is not there for another tutor, for a learner, or where there is none', async () => {
    expect(await outcome(() => tutorsSet(desk, tilda, 'issued'))).toBe('no-such-thing');
    expect(await outcome(() => tutorsSet(desk, lea, 'issued'))).toBe('no-such-thing');
    expect(await outcome(() => tutorsSet(desk, ada, 'nowhere'))).toBe('no-such-thing');
  });

  it('is there for a learner of its class once it is issued, and is told to be withdrawn', async () => {
    expect(await learnersSet(desk, lea, 'issued')).toBe(SETS['issued']);
    expect(await outcome(() => learnersSet(desk, lea, 'draft'))).toBe('no-such-thing');
    expect(await outcome(() => learnersSet(desk, lea, 'other'))).toBe('no-such-thing');
    expect(await outcome(() => learnersSet(desk, lea, 'nowhere'))).toBe('no-such-thing');
    expect(await outcome(() => learnersSet(desk, tom, 'issued'))).toBe('no-such-thing');
    expect(await outcome(() => learnersSet(desk, lea, 'withdrawn'))).toBe('withdrawn');
    // Whoever isn't in the class isn't told that it was.
    expect(await outcome(() => learnersSet(desk, lars, 'withdrawn'))).toBe('no-such-thing');
  });

  it('counts as issued from when it was until it is withdrawn', async () => {
    expect(await outcome(() => checkIssued(SETS['issued']!))).toBe('let in');
    expect(await outcome(() => checkIssued(SETS['draft']!))).toBe('not-issued');
    expect(await outcome(() => checkIssued(SETS['withdrawn']!))).toBe('not-issued');
  });

  it('can be made by an administrator in a class that is there', async () => {
    expect(await outcome(() => checkTutor(desk, ada, 'c-own'))).toBe('let in');
    expect(await outcome(() => checkTutor(desk, ada, 'nowhere'))).toBe('no-such-thing');
    expect(await outcome(() => checkTutor(desk, tom, 'c-own'))).toBe('let in');
    expect(await outcome(() => checkTutor(desk, tom, 'c-other'))).toBe('no-such-thing');
  });
});

describe('a paper', () => {
  it('is there for the tutor of its set', async () => {
    expect(await tutorsPaper(desk, tom, 'begun')).toEqual({ kept: SETS['issued'], paper: PAPERS['begun'] });
    for (const [who, id] of [
      [tilda, 'begun'],
      [lea, 'begun'],
      [tom, 'foreign'],
      [tom, 'nowhere'],
      [ada, 'orphan'],
    ] as const)
      expect(await outcome(() => tutorsPaper(desk, who, id))).toBe('no-such-thing');
  });

  it('is there for whose it is from when it was begun, and for no other learner', async () => {
    expect(await ownPaper(desk, lea, 'begun')).toEqual({ kept: SETS['issued'], paper: PAPERS['begun'] });
    for (const [who, id] of [
      [lea, 'made'],
      [lea, 'foreign'],
      [lars, 'begun'],
      [tom, 'begun'],
      [lea, 'orphan'],
      [lea, 'nowhere'],
    ] as const)
      expect(await outcome(() => ownPaper(desk, who, id))).toBe('no-such-thing');
    expect(await outcome(() => ownPaper(desk, lea, 'withdrawn'))).toBe('withdrawn');
  });

  it('can be worked on by who is still in the class; who has left it may only look', async () => {
    expect(await workingPaper(desk, lea, 'begun')).toEqual({ kept: SETS['issued'], paper: PAPERS['begun'] });
    expect(await outcome(() => workingPaper(desk, lea, 'left'))).toBe('no-such-thing.leftClass');
    expect(await outcome(() => ownPaper(desk, lea, 'left'))).toBe('let in');
  });

  it('is whole where it is kept', async () => {
    expect(await wholePaper(desk, PAPERS['begun']!)).toMatchObject({ id: 'begun', paper: {} });
    expect(await outcome(() => wholePaper(desk, head('nowhere', 'issued')))).toBe('no-such-thing');
  });
});

describe('circuits that are not marked elsewhere', () => {
  const papersAt = async (at: number, learner = 'lea') =>
    (await new Guard(store, () => at).papersOf(learner)).map(({ paper }) => paper.id);

  it('are those of papers that can be worked on or will be, of the classes that one is in', async () => {
    expect(await papersAt(CLOSES - 1)).toEqual(['begun', 'made', 'withdrawn']);
    expect(await papersAt(OPENS - 1)).toEqual(['begun', 'made', 'withdrawn']);
    expect(await papersAt(CLOSES)).toEqual([]);
    expect(await papersAt(OPENS, 'lars')).toEqual(['foreign']);
  });

  it('are worked out once for each paper', async () => {
    const guard = new Guard(store, () => OPENS);
    asked.length = 0;
    const [first] = await guard.papersOf('lars');
    expect([...first!.circuits]).toEqual([[CIRCUIT, 0]]);
    expect((await guard.papersOf('lars'))[0]!.circuits).toBe(first!.circuits);
    expect(asked).toEqual(['foreign']);
  });

  it('that were to be marked elsewhere are noted with their item for the tutor, and others are not', async () => {
    const guard = new Guard(store, () => OPENS);
    const [paper] = await guard.papersOf('lars');
    await guard.tried({ paper: paper!, circuit: CIRCUIT }, 'practice');
    await guard.tried({ paper: paper!, circuit: 'another' }, 'practice');
    expect(tried).toEqual([['foreign', 0, 'practice']]);
  });
});
