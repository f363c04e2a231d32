import type { JobInput, JobName, JobOutput, Talk } from './jobs.ts';

/** How a job is done. */
export interface JobSettings {
  /** For whom: those who wait take turns, so that nobody has to wait for all that another one asked for. */
  readonly owner: string;
  /** Nobody wants it any more. */
  readonly signal?: AbortSignal;
  /** What the job works on, one after the other as it asks for it. */
  readonly feed?: AsyncIterable<unknown>;
  /** Takes what the job makes, piece by piece; it goes on when that is done. */
  readonly take?: (piece: Uint8Array) => Promise<void>;
}

/** Does jobs. */
export interface Work {
  /**
   * @throws what the job throws; `JobEnded` when it was ended before it was done; `ApiFailure` ('too-busy') when too much waits
   */
  run<N extends JobName>(name: N, input: JobInput<N>, settings: JobSettings): Promise<JobOutput<N>>;
  /** Ends what is being done and what waits. */
  close(): Promise<void>;
}

/** A job that took longer than it may, took more memory, or wasn't wanted any more. */
export class JobEnded extends Error {
  readonly why: 'too-long' | 'too-large' | 'not-wanted' | 'closing';

  constructor(job: JobName, why: JobEnded['why']) {
    super(`The job ${job} was ended: ${why}.`);
    this.why = why;
  }
}

/** Does jobs where it is called: for commands, which have nobody else to serve meanwhile. */
export const workHere: Work = {
  async run<N extends JobName>(name: N, input: JobInput<N>, { feed, take }: JobSettings) {
    const { jobs } = await import('./jobs.ts');
    const job = jobs[name] as (input: JobInput<N>, talk: Talk) => Promise<JobOutput<N>>;
    const source = feed?.[Symbol.asyncIterator]();
    return job(input, {
      next: async <T>() => (source && (await source.next()).value) as T | undefined,
      give: async (piece) => take?.(piece),
    });
  },
  async close() {},
};
