import { existsSync, rmSync } from 'node:fs';
import { storeFile } from '../../store/index.ts';
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
  const told = progressOf(io, 'Making up three weeks of work');
  const progress = (share: number): void => told(Math.round(share * 100), 100);
  const clockNow = (): number => clock.at;
  await withNewStore(
    io,
    folder,
    (store) => fillDemo({ desk: { store, course, now: clockNow }, clock, now, progress }),
    { now: clockNow },
  );
}

/** Makes up a class where there is none yet, and serves it. */
export async function demo({ data, port, fresh = false, serve: serves }: DemoOptions, io: Io): Promise<void> {
  if (io.environment['DATABASE_URL'])
    throw new UsageError(
      'The demo is kept in a folder of its own, and DATABASE_URL names a database.',
      'Run it with DATABASE_URL empty.',
    );
  // Before half a minute is spent.
  readPort(port);
  const file = storeFile(data);
  if (fresh) for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
  if (!existsSync(file)) {
    io.out('Making up a class of fitters at a flour line, with three weeks of work: about half a minute.');
    try {
      await fill(data, io);
    } catch (error) {
      // Half of a class would be taken for a whole one the next time.
      if (existsSync(file)) for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
      throw error;
    }
  }
  const [group] = GROUPS;
  io.out('All people and all their work are made up. They sign in with these names:');
  io.out(`    tutor          ${TUTOR.signIn}`);
  io.out(`    administrator  ${ADMINISTRATOR.signIn}`);
  io.out(
    `    learners       ${group!.learners
      .slice(0, 3)
      .map(({ signIn }) => signIn)
      .join(', ')}, …`,
  );
  io.out(`and all with the password ${DEMO_PASSWORD}`);
  if (!serves) return;
  await serve({ data, port, host: '127.0.0.1', class: true, log: 'warn' }, io);
}
