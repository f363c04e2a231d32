import { once } from 'node:events';
import { PassThrough, type Readable } from 'node:stream';
import type { Course } from '../../practice/index.ts';
import type { Store } from '../../store/index.ts';
import type { Words } from '../../words/index.ts';
import type { JobInput, JobName, JobOutput } from '../work/jobs.ts';
import { type Work, workHere } from '../work/work.ts';

/** Bytes of a file that are held for somebody who reads slowly. */
const HELD = 1024 * 1024;

/** What homework is done with, by the server and by the commands alike. */
export interface Desk {
  readonly store: Store;
  readonly course: Course;
  /** What is told, in the language of those who read it. */
  readonly words: Words;
  /** Where long work is done; where it is asked for unless it is given. */
  readonly work?: Work;
  /** Milliseconds since 1970; alone decides what is open. */
  now(): number;
}

/** Does a job for somebody. */
export const workFor = <N extends JobName>(
  { work = workHere }: Desk,
  owner: string,
  name: N,
  input: JobInput<N>,
): Promise<JobOutput<N>> => work.run(name, input, { owner });

/** Does a job that makes a file, for somebody; gives the file piece by piece. Who stops reading it ends the job. */
export function fileFor<N extends JobName>(
  { work = workHere }: Desk,
  owner: string,
  name: N,
  input: JobInput<N>,
  feed: AsyncIterable<unknown>,
): Readable {
  const file = new PassThrough({ highWaterMark: HELD });
  const gone = new AbortController();
  file.on('close', () => gone.abort());
  const take = async (piece: Uint8Array): Promise<void> => {
    if (!file.write(piece)) await once(file, 'drain', { signal: gone.signal });
  };
  work.run(name, input, { owner, feed, take, signal: gone.signal }).then(
    () => file.end(),
    (error) => file.destroy(error),
  );
  return file;
}
