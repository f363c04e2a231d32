/** What the page knows of the learner: answers, the memory that follows from them, and what waits for the server. */
import { computed, signal } from '@preact/signals';
import type { AnswerRecord } from '../../shared/practice.ts';
import { mergeHistories, type Recalls, replay } from '../memory/index.ts';
import { historyOf } from '../practice/index.ts';
import type { Local } from './local/database.ts';
import { type SyncResult, synchronise } from './local/sync.ts';

export const answers = signal<readonly AnswerRecord[]>([]);
export const waiting = signal(0);
export const connection = signal<'unknown' | SyncResult>('unknown');

/** The memory is always what all answers in order of their time lead to, whichever device they came from. */
export const recalls = computed<Recalls>(() => replay(mergeHistories([historyOf(answers.value)])));
export const seenCircuits = computed<readonly string[]>(() => [
  ...new Set(answers.value.map(({ circuit }) => circuit)),
]);

/** Seconds until the next try, doubling from the first to the last. */
const RETRY_FIRST = 2;
const RETRY_LAST = 300;

export class Learner {
  private readonly local: Local;
  private running: Promise<void> | undefined;
  private again = false;
  private retry = RETRY_FIRST;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(local: Local) {
    this.local = local;
  }

  async load(): Promise<void> {
    answers.value = await this.local.answers();
    waiting.value = await this.local.waiting();
    addEventListener('online', () => this.sync());
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') this.sync();
    });
    this.sync();
  }

  /** Keeps an answer; it is on this device when this resolves, and on its way to the server. */
  async keep(answer: AnswerRecord): Promise<void> {
    await this.local.keep(answer);
    answers.value = [...answers.value, answer];
    waiting.value = await this.local.waiting();
    this.sync();
  }

  /** Starts sending and fetching, or once more when it is under way. */
  sync(): void {
    clearTimeout(this.timer);
    if (this.running) {
      this.again = true;
      return;
    }
    this.running = this.exchange().finally(() => {
      this.running = undefined;
      if (this.again) {
        this.again = false;
        this.sync();
      }
    });
  }

  private async exchange(): Promise<void> {
    const result = await synchronise(
      this.local,
      (path, init) => fetch(path, init),
      (fresh) => this.takeIn(fresh),
    );
    connection.value = result;
    waiting.value = await this.local.waiting();
    this.retry = result === 'done' ? RETRY_FIRST : Math.min(RETRY_LAST, this.retry * 2);
    if (result === 'offline') this.timer = setTimeout(() => this.sync(), this.retry * 1000);
  }

  private takeIn(fresh: readonly AnswerRecord[]): void {
    const known = new Set(answers.value.map(({ id }) => id));
    const unknown = fresh.filter(({ id }) => !known.has(id));
    if (unknown.length > 0)
      answers.value = [...answers.value, ...unknown].sort((one, other) => one.at - other.at);
  }
}
