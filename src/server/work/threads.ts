import { fileURLToPath } from 'node:url';
import { MessageChannel } from 'node:worker_threads';
import { Piscina } from 'piscina';
import { ApiFailure } from '../problems.ts';
import { FairQueue } from './fair-queue.ts';
import type { JobInput, JobName, JobOutput } from './jobs.ts';
import type { Order, Said } from './thread.ts';
import { JobEnded, type JobSettings, type Work } from './work.ts';

/** Work of one sort is done one after the other, beside work of the other sorts. */
type Sort = 'answers' | 'papers' | 'files';
const SORTS: readonly Sort[] = ['answers', 'papers', 'files'];

interface Rule {
  readonly sort: Sort;
  /** Milliseconds for which one such job may work, from when it has begun. */
  readonly most: number;
}

const RULES: Readonly<Record<JobName, Rule>> = {
  // An answer that people can give is marked within some milliseconds; on a machine that does much else these take longer.
  lookAgain: { sort: 'answers', most: 4_000 },
  choosePlaces: { sort: 'papers', most: 60_000 },
  makePaper: { sort: 'papers', most: 60_000 },
  markPaper: { sort: 'papers', most: 60_000 },
  explainPaper: { sort: 'papers', most: 60_000 },
  tellMarks: { sort: 'papers', most: 60_000 },
  // As long as it takes to send it to somebody far away.
  printPapers: { sort: 'files', most: 600_000 },
  printKey: { sort: 'files', most: 600_000 },
  tableMarks: { sort: 'files', most: 600_000 },
  stateMarks: { sort: 'files', most: 600_000 },
  printEvidence: { sort: 'files', most: 60_000 },
  packQti: { sort: 'files', most: 60_000 },
};

/** Jobs that may wait, of everybody and of one owner: what waits is held in memory. */
const MOST_WAITING = 20_000;
const MOST_OF_ONE = 2_000;
/** Megabytes of JavaScript objects that one thread may have. */
const MOST_MEMORY = 192;
/** A thread that had nothing to do for so long ends; the next job starts another one. */
const IDLE = 30_000;
/** Threads give way to the one that answers requests (`nice`). */
const GIVES_WAY = 10;

interface Waiting {
  readonly name: JobName;
  readonly input: unknown;
  readonly settings: JobSettings;
  readonly forget: () => void;
  resolve(output: unknown): void;
  reject(error: unknown): void;
}

const thread = fileURLToPath(new URL('./thread.ts', import.meta.url));
/** As it is written, where TypeScript has to be taught to the thread as well; a build names the file it made of it. */
const isSource = thread.endsWith('.ts');
const loader = (): string => {
  const api = import.meta.resolve('tsx/esm/api');
  // Its usual way in teaches a thread nothing of what is imported while it runs, as words are (Node 20).
  return `data:text/javascript,import{register}from${encodeURIComponent(JSON.stringify(api))};register()`;
};

/** Does jobs in threads of their own: one of each sort at a time, for those who wait in turns, each for so long at most. */
export class WorkThreads implements Work {
  private pool: Piscina | null = null;
  private readonly queues = new Map(SORTS.map((sort) => [sort, new FairQueue<Waiting>()]));
  private readonly busy = new Set<Sort>();
  private closed = false;
  private readonly rules: Readonly<Record<JobName, Rule>>;

  /** @param most - milliseconds for which a job may work, in place of those that it has */
  constructor(most: Partial<Readonly<Record<JobName, number>>> = {}) {
    const entries = Object.entries(RULES).map(([name, rule]) => [
      name,
      { ...rule, most: most[name as JobName] ?? rule.most },
    ]);
    this.rules = Object.fromEntries(entries);
  }

  run<N extends JobName>(name: N, input: JobInput<N>, settings: JobSettings): Promise<JobOutput<N>> {
    const { owner, signal } = settings;
    const { sort } = this.rules[name];
    const queue = this.queues.get(sort)!;
    if (this.closed) return Promise.reject(new JobEnded(name, 'closing'));
    if (queue.size >= MOST_WAITING || queue.waitingOf(owner) >= MOST_OF_ONE)
      return Promise.reject(new ApiFailure({ says: 'too-busy.work' }, 60));
    return new Promise((resolve, reject) => {
      const gone = (): void => {
        if (queue.drop(owner, waiting)) reject(new JobEnded(name, 'not-wanted'));
      };
      const waiting: Waiting = {
        name,
        input,
        settings,
        forget: () => signal?.removeEventListener('abort', gone),
        resolve: resolve as Waiting['resolve'],
        reject,
      };
      if (signal?.aborted) return reject(new JobEnded(name, 'not-wanted'));
      signal?.addEventListener('abort', gone, { once: true });
      queue.add(owner, waiting);
      this.goOn(sort);
    });
  }

  async close(): Promise<void> {
    this.closed = true;
    for (const queue of this.queues.values())
      for (const { name, forget, reject } of queue.clear()) {
        forget();
        reject(new JobEnded(name, 'closing'));
      }
    await this.pool?.destroy();
  }

  private goOn(sort: Sort): void {
    if (this.busy.has(sort)) return;
    const waiting = this.queues.get(sort)!.next();
    if (!waiting) return;
    this.busy.add(sort);
    waiting.forget();
    void this.work(waiting)
      .then(waiting.resolve, waiting.reject)
      .finally(() => {
        this.busy.delete(sort);
        this.goOn(sort);
      });
  }

  private async work({ name, input, settings }: Waiting): Promise<unknown> {
    const { signal, feed, take } = settings;
    const { port1: own, port2: port } = new MessageChannel();
    const source = feed?.[Symbol.asyncIterator]();
    const end = new AbortController();
    let failure: unknown = new JobEnded(name, 'closing');
    let timer: NodeJS.Timeout | undefined;
    const stop = (reason: unknown): void => {
      failure = reason;
      end.abort();
    };
    const notWanted = (): void => stop(new JobEnded(name, 'not-wanted'));
    signal?.addEventListener('abort', notWanted, { once: true });
    const answer = async (said: Said): Promise<unknown> => {
      if (said.kind === 'next') return source && (await source.next()).value;
      if (said.kind === 'give') return take?.(said.piece);
      timer = setTimeout(() => stop(new JobEnded(name, 'too-long')), this.rules[name].most);
      return undefined;
    };
    own.on('message', (said: Said) => {
      answer(said).then((value) => {
        if (said.kind !== 'begun') own.postMessage(value);
      }, stop);
    });
    try {
      const order: Order = { name, input, port };
      return await this.threads().run(order, { transferList: [port], signal: end.signal });
    } catch (error) {
      if (end.signal.aborted || this.closed) throw failure;
      if ((error as NodeJS.ErrnoException).code === 'ERR_WORKER_OUT_OF_MEMORY')
        throw new JobEnded(name, 'too-large');
      throw error;
    } finally {
      clearTimeout(timer);
      signal?.removeEventListener('abort', notWanted);
      own.close();
      await source?.return?.();
    }
  }

  /** Started when there is something to do for the first time. */
  private threads(): Piscina {
    this.pool ??= new Piscina({
      filename: thread,
      minThreads: 0,
      maxThreads: SORTS.length,
      idleTimeout: IDLE,
      niceIncrement: GIVES_WAY,
      resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY },
      ...(isSource ? { execArgv: ['--import', loader()] } : { execArgv: [] }),
    });
    return this.pool;
  }
}
