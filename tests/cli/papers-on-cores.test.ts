/** The papers of a large class are made by two programs at once. */
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe, expect, it } from 'vitest';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
import { builtPolewise } from '../support/built.ts';
import { runCommand } from './fake-io.ts';

const LEARNERS = 400;
const data = mkdtempSync(join(tmpdir(), 'polewise-cores-'));
afterAll(() => rmSync(data, { recursive: true, force: true }));

async function drafted(title: string): Promise<string> {
  const store = await openSqliteStore(storeFile(data));
  const { id } = await store.people.classes.make(title, null, null);
  await store.people.joining.byNames(
    id,
    Array.from({ length: LEARNERS }, (_, at) => `Learner ${at + 1}`),
  );
  await store.close();
  const words = ['new', id, '--skill', 'changeover-legs', '--items', '2', '--level', 'middle'];
  const made = await runCommand(['homework', ...words, '--title', title, '--closes', '+7d', '--data', data], {
    now: Date.now(),
  });
  return /homework issue (\S+)/.exec(made.out)![1]!;
}

/** Everybody has a paper, and no two have a circuit in the same place. */
async function checkPapers(set: string): Promise<void> {
  const store = await openSqliteStore(storeFile(data));
  const heads = await store.homework.papersIn([set]);
  expect(new Set(heads.map(({ learner }) => learner)).size).toBe(LEARNERS);
  expect(heads).toHaveLength(LEARNERS);
  const circuits = await store.homework.circuitsIn(set);
  expect([...circuits.values()].map(({ size }) => size)).toEqual([LEARNERS, LEARNERS]);
  expect(await store.check()).toEqual([]);
  await store.close();
}

describe('issuing to a large class', () => {
  it('starts the program once more for the same set, and ends it when all is made', async () => {
    const set = await drafted('Helped');
    const polewise = await builtPolewise();
    const started: (readonly string[])[] = [];
    const helping: Promise<unknown>[] = [];
    let ended = 0;
    const ran = await runCommand(['homework', 'issue', set, '--data', data], {
      now: Date.now(),
      alongside: (words) => {
        started.push(words);
        // A program of its own: two stores of one thread that wait for each other would wait in vain.
        helping.push(promisify(execFile)(process.execPath, [polewise, ...words]));
        return () => {
          ended++;
        };
      },
    });
    expect(ran).toMatchObject({ code: 0, out: expect.stringContaining(`with ${LEARNERS} papers made`) });
    expect(started).toEqual([['homework', 'papers', set, '--data', data]]);
    expect(ended).toBe(1);
    expect(await Promise.all(helping)).toMatchObject([{ stderr: '' }]);
    await checkPapers(set);
  });

  it('does so as a program of its own', async () => {
    const set = await drafted('As a program');
    const words = [await builtPolewise(), 'homework', 'issue', set, '--data', data];
    const { stdout, stderr } = await promisify(execFile)(process.execPath, words);
    expect(stdout).toContain(`with ${LEARNERS} papers made`);
    expect(stderr).toBe('');
    await checkPapers(set);
  });
});
