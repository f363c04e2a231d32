import type { Course } from '../../practice/index.ts';
import type { Store } from '../../store/index.ts';
import type { JobInput, JobName, JobOutput } from '../work/jobs.ts';
import { type Work, workHere } from '../work/work.ts';

/** What homework is done with, by the server and by the commands alike. */
export interface Desk {
  readonly store: Store;
  readonly course: Course;
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
