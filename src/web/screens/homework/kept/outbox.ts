import { signal } from '@preact/signals';
import type { GivenAnswer, KeptHomework } from './database.ts';
import { type Post, type SendResult, sendWaiting } from './send.ts';

/** Several touches shortly after one another go as one. */
const PAUSE = 700;
/** Seconds until the next try, doubling from the first to the last. */
const RETRY_FIRST = 2;
const RETRY_LAST = 60;

/** One person's answers on their way to the server. */
export class Outbox {
  readonly person: string;
  readonly kept: KeptHomework;
  /** Answers that have not arrived. */
  readonly waiting = signal(0);
  readonly standing = signal<'unknown' | 'sending' | SendResult>('unknown');
  /** Answers that the server didn't take, by paper: they are not saved, and never will be. */
  readonly refused = signal<ReadonlyMap<string, number>>(new Map());
  /** What the server's clock is ahead of this device's, in milliseconds; null before it has been heard. */
  readonly ahead = signal<number | null>(null);
  /** Counts up whenever something was sent or refused, for whoever shows what arrived. */
  readonly rounds = signal(0);
  private readonly post: Post;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private running: Promise<SendResult> | undefined;
  private retry = RETRY_FIRST;

  constructor(kept: KeptHomework, person: string, post: Post) {
    this.kept = kept;
    this.person = person;
    this.post = post;
  }

  /** From now on what waits is sent: now, and when the network is back. */
  start(): void {
    addEventListener('online', () => this.soon(0));
    document.addEventListener('visibilitychange', () => this.soon(0));
    this.soon(0);
  }

  hear(now: number): void {
    this.ahead.value = now - Date.now();
  }

  /** Now by the server's clock, as far as it has been heard. */
  now(): number {
    return Date.now() + (this.ahead.value ?? 0);
  }

  /** Keeps an answer; it is on this device when this resolves, and on its way to the server. */
  async give(given: Omit<GivenAnswer, 'person'>): Promise<void> {
    await this.kept.give({ ...given, person: this.person });
    await this.count();
    this.soon(PAUSE);
  }

  private async count(): Promise<void> {
    this.waiting.value = (await this.kept.waitingOf(this.person)).length;
  }

  private soon(milliseconds: number): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.flush().catch(() => undefined);
    }, milliseconds);
  }

  /** Sends everything that waits at the moment; tells how it went. */
  async flush(): Promise<SendResult> {
    clearTimeout(this.timer);
    // What was given while something was under way goes in a round of its own.
    if (this.running) await this.running;
    this.running ??= this.round();
    return this.running;
  }

  private async round(): Promise<SendResult> {
    await this.count();
    if (this.waiting.value > 0) this.standing.value = 'sending';
    const result = await sendWaiting(this.kept, this.person, this.post, (now) => this.hear(now)).catch(
      () => 'later' as const,
    );
    this.running = undefined;
    // Before it is said how it went: what wasn't taken is never called saved.
    this.refused.value = await this.kept.refusedCounts(this.person);
    this.standing.value = result;
    await this.count();
    this.rounds.value += 1;
    this.retry = result === 'later' ? Math.min(RETRY_LAST, this.retry * 2) : RETRY_FIRST;
    if (result === 'later') this.soon(this.retry * 1000);
    return result;
  }
}
