/** The made-up class: every report has something to look at, and all of it holds against the solver. */

import { createHmac } from 'node:crypto';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { GROUPS } from '../../src/cli/demo/made-up-people.ts';
import { courseOf } from '../../src/practice/index.ts';
import { markAnswer } from '../../src/questions/index.ts';
import type { Desk } from '../../src/server/homework/desk.ts';
import { competenceOf } from '../../src/server/homework/reports/competence.ts';
import { setReport } from '../../src/server/homework/reports/set-report.ts';
import { termOf } from '../../src/server/homework/reports/term.ts';
import { openStore, type Store, storeFile } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { madeUp } from '../../src/words/en/demo.ts';
import { ownBank } from '../support/own-bank.ts';
import { runCommand } from './fake-io.ts';

// Which papers are drawn hangs on ids and on the store's secret: here on ones that are the same each time.
vi.mock('../../src/store/new-id.ts', () => {
  let made = 0;
  return { newId: () => `demo${String(++made).padStart(17, '0')}` };
});
vi.mock('../../src/store/people/installation.ts', async (original) => {
  const real = await original<typeof import('../../src/store/people/installation.ts')>();
  const keyed = async (purpose: string, text: string): Promise<Buffer> =>
    createHmac('sha256', 'demo').update(`${purpose}|${text}`).digest();
  return {
    ...real,
    installationOn: (db: Parameters<typeof real.installationOn>[0]) => ({
      ...real.installationOn(db),
      keyed,
    }),
  };
});

const NOW = Date.UTC(2026, 4, 20, 10);
const ADMIN = { id: 'nobody-in-particular', role: 'admin', session: null } as const;
const folder = mkdtempSync(join(tmpdir(), 'polewise-demo-'));
const data = join(folder, 'demo');
let store: Store;
let desk: Desk;
let out = '';

beforeAll(async () => {
  const ran = await runCommand(['demo', '--data', data, '--no-serve'], { now: NOW });
  expect(ran).toMatchObject({ code: 0, err: '' });
  out = ran.out;
  store = await openStore({ kind: 'file', file: storeFile(data) }, { now: () => NOW });
  const course = courseOf(ownBank());
  if (!course.ok) throw new Error(JSON.stringify(course.problems));
  desk = { store, course: course.value, words: english, now: () => NOW };
});
afterAll(async () => {
  await store?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the demo', () => {
  it('says who signs in with what, and that all of it is made up', () => {
    expect(out).toMatch(/made up/);
    expect(out).toMatch(/berta\.millstone/);
    expect(out).toMatch(/password flour-line-demo/);
    expect(GROUPS.every(({ id }) => madeUp.groups[id].title.includes('made up'))).toBe(true);
  });

  it('has a store in which nothing is amiss, nothing lies in the future, and every mark comes out again', async () => {
    expect(await store.check()).toEqual([]);
    const learners = await store.learners();
    expect(learners.length).toBe(GROUPS.flatMap((group) => group.learners).length);
    let looked = 0;
    for (const { learner } of learners.slice(0, 4)) {
      const records = await store.answersOf(learner);
      expect(records.every(({ at }) => at < NOW)).toBe(true);
      for (const { question, answer, mark } of records.slice(0, 25)) {
        expect(markAnswer(question, answer).mark).toEqual(mark);
        looked += 1;
      }
    }
    expect(looked).toBeGreaterThan(40);
  });

  it('has something to say in every report', async () => {
    const [first] = (await store.people.classes.list(null)).filter(
      ({ learners }) => learners === GROUPS[0]!.learners.length,
    );
    const term = await termOf(desk, ADMIN, first!.id);
    expect(term.sets).toHaveLength(3);
    expect(term.report.ideas.length).toBeGreaterThan(2);
    const reports = [];
    for (const { id } of term.sets) reports.push(await setReport(desk, ADMIN, id));
    expect(reports.map(({ state }) => state).sort()).toEqual(['closed', 'closed', 'open']);
    for (const { report, state } of reports) {
      expect(report.places.some(({ discrimination }) => discrimination !== null)).toBe(true);
      expect(report.ideas.length).toBeGreaterThan(0);
      // Before a set is closed nobody has failed to do anything.
      if (state === 'closed') expect(report.lookAfter.length).toBeGreaterThan(0);
      else expect(report.lookAfter).toEqual([]);
    }
    const { matrix, refreshers } = await competenceOf(desk, ADMIN, first!.id, {
      days: 30,
      proofs: 'any',
    });
    const kinds = new Set(matrix.rows.flatMap(({ cells }) => cells.map(({ kind }) => kind)));
    expect(kinds).toEqual(new Set(['held', 'fading', 'not-yet']));
    expect(refreshers.length).toBeGreaterThan(0);
  });

  it('is left as it is by a second call', async () => {
    const before = await store.learners();
    const ran = await runCommand(['demo', '--data', data, '--no-serve'], { now: NOW });
    expect(ran.code).toBe(0);
    expect(ran.out).not.toContain('Making up');
    expect(await store.learners()).toEqual(before);
    expect(existsSync(storeFile(data))).toBe(true);
  });

  it('keeps away from a database', async () => {
    const environment = { DATABASE_URL: 'postgres://nobody@127.0.0.1:1/none' };
    const ran = await runCommand(['demo', '--data', data, '--no-serve'], { environment });
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('DATABASE_URL');
  });
});
