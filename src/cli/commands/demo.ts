import { existsSync, rmSync } from 'node:fs';
import { storeFile } from '../../store/index.ts';
import { coreWordsOf } from '../core-words.ts';
import { openCourse } from '../course.ts';
import { DEMO_PASSWORD, fillDemo } from '../demo/fill-demo.ts';
import { ADMINISTRATOR, GROUPS, TUTOR } from '../demo/made-up-people.ts';
import { type Io, UsageError } from '../io.ts';
import { progressOf, withNewStore } from '../store-place.ts';
import { readPort, serve } from './serve.ts';

export interface DemoOptions {
  readonly data: string;
  readonly port: string;
  readonly fresh?: boolean;
  readonly serve: boolean;
}

async function fill(folder: string, io: Io): Promise<void> {
  const now = io.now();
  const clock = { at: now };
  const course = await openCourse(io);
  const core = await coreWordsOf(io);
  const told = progressOf(io, io.words.progress.madeUp);
  const progress = (share: number): void => told(Math.round(share * 100), 100);
  const clockNow = (): number => clock.at;
  await withNewStore(
    io,
    folder,
    (store) =>
      fillDemo({
        desk: { store, course, words: core, now: clockNow },
        words: io.words.madeUp,
        clock,
        now,
        progress,
      }),
    { now: clockNow },
  );
}

/** Makes up a class where there is none yet, and serves it. */
export async function demo({ data, port, fresh = false, serve: serves }: DemoOptions, io: Io): Promise<void> {
  const { demo: said } = io.words;
  if (io.environment['DATABASE_URL'])
    throw new UsageError(said.notInADatabase.wrong, said.notInADatabase.right);
  // Before half a minute is spent.
  readPort(port, io);
  const file = storeFile(data);
  if (fresh) for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
  if (!existsSync(file)) {
    io.out(said.makingUp);
    try {
      await fill(data, io);
    } catch (error) {
      // Half of a class would be taken for a whole one the next time.
      if (existsSync(file)) for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
      throw error;
    }
  }
  const [group] = GROUPS;
  io.out(said.madeUp);
  const learners = group!.learners.slice(0, 3).map(({ signIn }) => signIn);
  const who = [
    [said.tutor, TUTOR],
    [said.administrator, ADMINISTRATOR],
    [said.learners, said.andMore(learners)],
  ] as const;
  const width = Math.max(...who.map(([role]) => role.length));
  for (const [role, names] of who) io.out(`    ${role.padEnd(width)}  ${names}`);
  io.out(said.password(DEMO_PASSWORD));
  if (!serves) return;
  await serve({ data, port, host: '127.0.0.1', class: true, log: 'warn' }, io);
}
