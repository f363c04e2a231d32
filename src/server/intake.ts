import type { AnswerRecord } from '../../shared/practice.ts';
import { type Found, failureOf, type Kept, type Proof, type Store, type Whose } from '../store/index.ts';
import { ApiFailure } from './problems.ts';

/** Answers kept in one transaction at most. */
const TOGETHER = 1000;
/** Answers that may wait; more are refused, to be sent again. */
const MOST_WAITING = 10_000;

interface Waiting {
  readonly records: readonly AnswerRecord[];
  readonly found: ReadonlyMap<AnswerRecord, Found>;
  readonly proofs: ReadonlyMap<AnswerRecord, Proof>;
  resolve(kept: readonly Kept[]): void;
  reject(error: unknown): void;
}

/**
 * Keeps answers that come at the same time in one transaction: making sure of the disk takes as long for one as for
 * hundreds. Each is acknowledged only after its own transaction is on the disk.
 */
export class Intake {
  private readonly store: Pick<Store, 'keepAnswers'>;
  private readonly whose: Whose;
  private waiting: Waiting[] = [];
  private count = 0;
  private running = false;

  /** @param whose - of a person, who has to be there, or anybody's */
  constructor(store: Pick<Store, 'keepAnswers'>, whose: Whose) {
    this.store = store;
    this.whose = whose;
  }

  /** Resolves when the answers are on the disk; rejects when they are not kept. `found`, `proofs`: see `Store.keepAnswers`. */
  keep(
    records: readonly AnswerRecord[],
    found: ReadonlyMap<AnswerRecord, Found>,
    proofs: ReadonlyMap<AnswerRecord, Proof>,
  ): Promise<readonly Kept[]> {
    if (this.count + records.length > MOST_WAITING) throw new ApiFailure({ says: 'too-busy.answers' });
    this.count += records.length;
    return new Promise((resolve, reject) => {
      this.waiting.push({ records, found, proofs, resolve, reject });
      if (!this.running) {
        this.running = true;
        // After the requests that have arrived by now have been read.
        setImmediate(() => void this.run());
      }
    });
  }

  private async run(): Promise<void> {
    while (this.waiting.length > 0) {
      await this.keepTogether(this.next());
      await new Promise<void>((go) => setImmediate(go));
    }
    this.running = false;
  }

  /** Those that waited longest, as many as go into one transaction. */
  private next(): readonly Waiting[] {
    let size = 0;
    let taken = 0;
    for (const { records } of this.waiting) {
      if (taken > 0 && size + records.length > TOGETHER) break;
      size += records.length;
      taken++;
    }
    this.count -= size;
    return this.waiting.splice(0, taken);
  }

  private async keepTogether(group: readonly Waiting[]): Promise<void> {
    try {
      const kept = await this.store.keepAnswers(
        group.flatMap(({ records }) => records),
        new Map(group.flatMap(({ found }) => [...found])),
        new Map(group.flatMap(({ proofs }) => [...proofs])),
        this.whose,
      );
      let from = 0;
      for (const { records, resolve } of group) {
        resolve(kept.slice(from, from + records.length));
        from += records.length;
      }
    } catch (error) {
      // What is wrong with one must not keep the others out; when the database fails, it fails for all.
      if (group.length > 1 && !failureOf(error)) for (const one of group) await this.keepTogether([one]);
      else for (const { reject } of group) reject(error);
    }
  }
}
