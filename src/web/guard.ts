/** Circuits of own papers that are open: known on this device too, so that nothing here marks or runs them. */
import type { TriedPlace } from '../../shared/homework.ts';
import type { GuardedCircuits } from '../../shared/homework-views.ts';
import { call } from './api.ts';
import type { Engine } from './engine/client.ts';
import type { Local } from './local/database.ts';
import { inStep } from './local/in-step.ts';
import { route } from './route.ts';

const MOST_TRIED = 100;

/** Where somebody is on the page, in the words of the contract. */
const PLACES: Partial<Readonly<Record<string, TriedPlace>>> = { try: 'try-it', bench: 'write' };

export class Guard {
  private readonly local: Local;
  private readonly engine: Engine;
  private last: Promise<unknown> = Promise.resolve();

  constructor(local: Local, engine: Engine) {
    this.local = local;
    this.engine = engine;
  }

  /** Goes by what this device knows. */
  async load(): Promise<void> {
    await this.tell((await this.local.value('guarded')) ?? []);
  }

  private async tell(papers: GuardedCircuits['papers']): Promise<void> {
    const now = Date.now();
    const open = papers.filter(({ until }) => until > now);
    await this.engine.call('guard', { circuits: open.flatMap(({ circuits }) => circuits) });
  }

  /** Asks the server, now and whenever the network is back or the page is looked at again. */
  keepInStep(): void {
    inStep(() => this.refresh().catch(() => undefined));
  }

  /** Sends what was tried, and asks which circuits it is now; without network it stays as it is. One after another. */
  refresh(): Promise<unknown> {
    const next = this.last.then(() => this.exchange());
    this.last = next.catch(() => undefined);
    return next;
  }

  private async exchange(): Promise<void> {
    for (const tried of (await this.local.value('tried')) ?? []) {
      await call('triedElsewhere', { body: tried });
      const left = ((await this.local.value('tried')) ?? []).slice(1);
      await this.local.setValue('tried', left);
    }
    const { papers } = await call('guardedCircuits');
    await this.local.setValue('guarded', papers);
    await this.tell(papers);
  }

  /** Notes that a circuit was to be marked or run where somebody is on the page at the moment. */
  async tried(circuit: string): Promise<void> {
    const where = PLACES[route.peek().screen] ?? 'practice';
    const known = (await this.local.value('tried')) ?? [];
    if (known.length >= MOST_TRIED) return;
    await this.local.setValue('tried', [...known, { circuit, place: where }]);
    await this.refresh();
  }
}

let guard: Guard | undefined;
/** From now on it is this one that is asked. */
export const guardWith = (made: Guard): void => {
  guard = made;
};
/** A paper was begun or handed in: which circuits it is has changed. */
export const guardAgain = (): void => {
  guard?.refresh().catch(() => undefined);
};
export const triedOnPage = (circuit: string): void => {
  guard?.tried(circuit).catch(() => undefined);
};
