/** Questions that the server issued to whoever uses the page: kept on the device, so that practice proves something offline. */
import type { IssuedQuestion } from '../../shared/issued.ts';
import { call } from './api.ts';
import type { Local } from './local/database.ts';

/** So many of a skill are few: more are asked for before they have gone. */
const FEW = 4;

export class Supply {
  private readonly local: Local;
  private issued: readonly IssuedQuestion[] = [];
  private last: Promise<unknown> = Promise.resolve();

  constructor(local: Local) {
    this.local = local;
  }

  /** What is on this device. */
  async load(): Promise<void> {
    this.issued = (await this.local.value('supply')) ?? [];
  }

  /** Those that can still be put, in their order. */
  get there(): readonly IssuedQuestion[] {
    const now = Date.now();
    return this.issued.filter(({ until }) => until > now);
  }

  /** One was put before the learner: it isn't put again. */
  async put(id: string): Promise<void> {
    await this.keep(this.issued.filter((one) => one.id !== id));
  }

  private async keep(issued: readonly IssuedQuestion[]): Promise<void> {
    this.issued = issued;
    await this.local.setValue('supply', issued);
  }

  /** Has the server issue what is missing. Without network it stays as it is. One after another. */
  refill(): Promise<unknown> {
    const next = this.last.then(() => this.fetch());
    this.last = next.catch(() => undefined);
    return next;
  }

  private async fetch(): Promise<void> {
    const have: Record<string, number> = {};
    for (const { skill } of this.there) have[skill] = (have[skill] ?? 0) + 1;
    const { issued } = await call('issueQuestions', { body: { have } });
    // Put ones may have gone while it was under way, and nothing that is there is issued again.
    if (issued.length > 0) await this.keep([...this.there, ...issued]);
  }

  /** From now on there are enough: now, and whenever some have gone and there is a network. */
  keepFilled(): void {
    addEventListener('online', () => this.soon());
    this.soon();
  }

  soon(): void {
    this.refill().catch(() => undefined);
  }

  /** Whether so few are left of a skill that there should be more. */
  isLow(skill: string): boolean {
    return this.there.filter((one) => one.skill === skill).length < FEW;
  }
}
