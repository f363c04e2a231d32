/**
 * A server that dies without warning, fifty times, while learners practise and work on their homework: what it
 * acknowledged is there, once, in the order in which it was given.
 */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { answerResults } from '../../shared/api.ts';
import { saveResults, submitted } from '../../shared/homework-views.ts';
import type { Answer } from '../../shared/question.ts';
import { type Random, randomOf } from '../../src/generator/index.ts';
import { courseOf } from '../../src/practice/index.ts';
import { blankAnswer, rightAnswer } from '../../src/questions/index.ts';
import type { Desk } from '../../src/server/homework/desk.ts';
import { beginPaper } from '../../src/server/homework/learner.ts';
import { draftSet, issueSet } from '../../src/server/homework/sets.ts';
import { settlePaper } from '../../src/server/homework/settle.ts';
import { openStore, type Store, storeFile } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { type Served, served } from '../server/served.ts';
import { answerWith, DAY, MORNING } from '../support/answers.ts';
import { ownBank } from '../support/own-bank.ts';

const KILLS = 50;
const LEARNERS = 4;

const folder = mkdtempSync(join(tmpdir(), 'polewise-killed-'));
let running: Served | undefined;
afterEach(async () => {
  if (running?.child.exitCode === null && running.child.signalCode === null) await running.end('SIGKILL');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const open = (): Promise<Store> => openStore({ kind: 'file', file: storeFile(folder) });

const deskOn = (store: Store): Desk => {
  const course = courseOf(ownBank());
  if (!course.ok) throw new Error(JSON.stringify(course.problems));
  return { store, course: course.value, words: english, now: Date.now };
};

/** A learner's device: what it still has to send, and what it was told. */
interface Device {
  readonly learner: string;
  readonly token: string;
  readonly paper: string;
  /** By item, a wrong and a right answer to go to and fro between. */
  readonly answers: readonly (readonly [wrong: Answer, right: Answer])[];
  readonly random: Random;
  /** Ids in the order in which they were given. */
  readonly practised: string[];
  readonly saved: { readonly id: string; readonly item: number; readonly answer: Answer }[];
  /** How many of each were acknowledged. */
  acknowledged: { practised: number; saved: number };
}

/** A class with a set that is open, and learners with papers that have been begun. */
async function begunClass(): Promise<Device[]> {
  const store = await open();
  const desk = deskOn(store);
  const { people } = store;
  const tutor = (await people.persons.make({ name: 'Tutor', role: 'tutor' }))!;
  const asking = { id: tutor.id, role: 'tutor', session: null } as const;
  const { id, joiningCode } = await people.classes.make('Ferry ramp fitters', null, tutor.id);
  const { set } = await draftSet(desk, asking, id, {
    title: 'Ramp relays',
    topics: [],
    skills: ['make-contact', 'changeover-legs'],
    items: 6,
    level: 'small',
    marksEach: 1,
    opensAt: Date.now() - 60_000,
    closesAt: Date.now() + DAY,
    attempts: 1,
    counts: 'best',
    help: 'none',
    review: 'after-closing',
    supervised: false,
  });
  await issueSet(desk, asking, set.id);
  const devices: Device[] = [];
  for (let number = 0; number < LEARNERS; number++) {
    const joined = await people.joining.asNew(joiningCode.replace('-', ''), { name: `Learner ${number}` });
    if (typeof joined === 'string') throw new Error(joined);
    const learner = joined.id;
    const { id: paper } = await beginPaper(desk, { id: learner, role: 'learner', session: null }, set.id);
    const kept = await store.homework.paper(paper);
    devices.push({
      learner,
      token: await people.sessions.begin(learner, 'a test'),
      paper,
      answers: kept!.paper.items.map(({ question }) => [blankAnswer(question), rightAnswer(question)]),
      random: randomOf(`killed/${number}`),
      practised: [],
      saved: [],
      acknowledged: { practised: 0, saved: 0 },
    });
  }
  await store.close();
  return devices;
}

async function post(address: string, token: string, path: string, body: unknown): Promise<unknown> {
  const reply = await fetch(`${address}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie: `polewise_session=${token}` },
    body: JSON.stringify(body),
  });
  const text = await reply.text();
  if (!reply.ok) throw new Refused(`${path}: ${reply.status} ${text}`);
  return JSON.parse(text);
}
/** A reply, though not the wanted one: no broken connection may look like this. */
class Refused extends Error {}

/** What was given and not acknowledged is sent first, and once more however often it was sent: as the page does. */
async function practise(device: Device, address: string): Promise<void> {
  const { practised, acknowledged, learner, token } = device;
  // Not of the form of answers to homework, which nobody may send.
  practised.push(`practised-${practised.length}-${learner}`);
  const batch = practised
    .slice(acknowledged.practised)
    .map((id, at) => answerWith({ id, learner, at: MORNING + (acknowledged.practised + at) * 1000 }));
  const { results } = answerResults.parse(await post(address, token, '/api/answers', { answers: batch }));
  expect(results.map(({ result }) => result)).not.toContain('refused');
  acknowledged.practised += batch.length;
}

async function save(device: Device, address: string): Promise<void> {
  const { saved, acknowledged, answers, random, paper, token } = device;
  const item = random.int(0, answers.length - 1);
  saved.push({ id: `s${saved.length}`, item, answer: answers[item]![random.int(0, 1)]! });
  const batch = saved.slice(acknowledged.saved);
  const told = await post(address, token, `/api/papers/${paper}/answers`, { answers: batch });
  const { results } = saveResults.parse(told);
  expect(results.map(({ result }) => result)).not.toContain('refused');
  acknowledged.saved += batch.length;
}

/** Works until the connection breaks. */
async function workUntilBroken(device: Device, address: string): Promise<void> {
  for (;;) {
    try {
      await (device.random.chance(0.5) ? practise : save)(device, address);
    } catch (error) {
      if (error instanceof TypeError) return;
      throw error;
    }
  }
}

describe('a server that is killed fifty times under load', () => {
  it('has lost nothing that it acknowledged and counts nothing twice', async () => {
    const devices = await begunClass();
    const moments = randomOf('moments');
    for (let kill = 0; kill < KILLS; kill++) {
      running = await served(['--class', '--data', folder]);
      const { address } = running;
      const working = devices.map((device) => workUntilBroken(device, address));
      await new Promise((go) => setTimeout(go, moments.int(1, 250)));
      expect(await running.end('SIGKILL')).toBeNull();
      await Promise.all(working);
    }
    // Some hand in twice, the second time after one more death.
    running = await served(['--class', '--data', folder]);
    const handIn = (device: Device, address: string): Promise<unknown> =>
      post(address, device.token, `/api/papers/${device.paper}/submit`, {});
    for (const device of devices) {
      await practise(device, running.address);
      await save(device, running.address);
    }
    const first = submitted.parse(await handIn(devices[0]!, running.address));
    await running.end('SIGKILL');
    running = await served(['--class', '--data', folder]);
    expect(submitted.parse(await handIn(devices[0]!, running.address))).toEqual(first);
    for (const device of devices.slice(1)) submitted.parse(await handIn(device, running.address));
    await running.end('SIGTERM');

    const store = await open();
    let total = 0;
    for (const { learner, paper, practised, saved, acknowledged } of devices) {
      expect(acknowledged).toEqual({ practised: practised.length, saved: saved.length });
      const records = (await store.answersOf(learner)).map(({ id }) => id);
      expect(records).toEqual(practised);
      const answers = await store.homework.answersOf(paper);
      expect(answers.map(({ id, item, answer }) => ({ id, item, answer }))).toEqual(saved);
      expect(answers.map(({ number }) => number)).toEqual(saved.map((_, at) => at + 1));
      total += records.length + answers.length;
    }
    // The load was one, and the kills came in the middle of it.
    expect(total).toBeGreaterThan(KILLS * LEARNERS);
    expect(await store.check()).toEqual([]);

    // The marks are those of the last answers.
    const desk = deskOn(store);
    for (const { paper, saved, answers } of devices) {
      const { set } = (await store.homework.paper(paper))!;
      await settlePaper(desk, (await store.homework.set(set))!, paper);
      const mark = (await store.homework.markOf(paper))!;
      mark.items.forEach(({ mark: { share } }, item) => {
        const last = saved.findLast((each) => each.item === item);
        expect(share).toBe(last?.answer === answers[item]![1] ? 1 : 0);
      });
    }
    await store.close();
  });
});
