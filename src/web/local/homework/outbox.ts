import { signal } from '@preact/signals';
import { wordsOf } from '../../api.ts';
import { inStep } from '../in-step.ts';
import { Rounds } from '../rounds.ts';
import type { GivenAnswer, KeptHomework } from './kept-homework.ts';
import { type Post, type SendResult, sendWaiting } from './send.ts';

/** Several touches shortly after one another go as one. */
const PAUSE = 700;
/** Milliseconds after which a store that failed is tried again. */
const RETRY_KEEPING = 3_000;
/** Seconds between two tries at most. */
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
  /** Answers that the browser threw away before they were sent. */
  readonly gone = signal(0);
  /** Why the last answer given is not kept on this device. */
  readonly unkept = signal<string | undefined>(undefined);
  private readonly post: Post;
  /** Answers that the device's store did not take, by paper and item, as they were given: they are tried again. */
  private readonly untaken = new Map<string, GivenAnswer>();
  private readonly sending = new Rounds(
    () => this.round(),
    (result) => result === 'later',
    RETRY_LAST,
  );

  constructor(kept: KeptHomework, person: string, post: Post) {
    this.kept = kept;
    this.person = person;
    this.post = post;
    kept.store.whenEvicted = (left) => {
      this.gone.value += Math.max(0, this.waiting.value - left);
      this.sending.soon(0);
    };
  }

  /** From now on what waits is sent: now, and when the network is back. */
  start(): void {
    inStep(() => this.sending.soon(0), true);
  }

  hear(now: number): void {
    this.ahead.value = now - Date.now();
  }

  /** Now by the server's clock, as far as it has been heard. */
  now(): number {
    return Date.now() + (this.ahead.value ?? 0);
  }

  /**
   * Keeps an answer; it is on this device when this resolves, and on its way to the server. Where the device's store fails
   * it stays in hand, and is tried again under the same id.
   */
  async give(given: Omit<GivenAnswer, 'person'>): Promise<void> {
    this.untaken.set(`${given.paper} ${given.item}`, { ...given, person: this.person });
    await this.keepUntaken();
    await this.count();
    this.sending.soon(PAUSE);
  }

  /** Tries those again that the device's store did not take. */
  async keepUntaken(): Promise<void> {
    try {
      for (const [place, given] of this.untaken) {
        await this.kept.give(given);
        if (this.untaken.get(place) === given) this.untaken.delete(place);
      }
      this.unkept.value = undefined;
    } catch (error) {
      this.unkept.value = wordsOf(error);
      this.sending.soon(RETRY_KEEPING);
    }
  }

  private async count(): Promise<void> {
    const waiting = await this.kept.waitingOf(this.person).catch(() => undefined);
    if (waiting) this.waiting.value = waiting.length + this.untaken.size;
  }

  /** Sends everything that waits at the moment, in a round of its own; tells how it went. */
  async flush(): Promise<SendResult> {
    return (await this.sending.run()) ?? 'later';
  }

  private async round(): Promise<SendResult> {
    await this.keepUntaken();
    await this.count();
    if (this.waiting.value > 0) this.standing.value = 'sending';
    const sent = await sendWaiting(this.kept, this.person, this.post, (now) => this.hear(now)).catch(
      () => 'later' as const,
    );
    const result = sent === 'done' && this.untaken.size > 0 ? 'later' : sent;
    // Before it is said how it went: what wasn't taken is never called saved.
    this.refused.value = await this.kept.refusedCounts(this.person).catch(() => this.refused.value);
    this.standing.value = result;
    await this.count();
    this.rounds.value += 1;
    return result;
  }
}
