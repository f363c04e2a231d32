/** What the page knows of the learner: answers, settings, and what waits for the server. */
import { signal } from '@preact/signals';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Settings } from '../../shared/settings.ts';
import { inNameOf } from './api.ts';
import { type AnswerLine, lineOf } from './local/answer-line.ts';
import type { Local } from './local/database.ts';
import type { Fetch, SyncResult } from './local/sync.ts';
import { meetAgain } from './me.ts';

export const answers = signal<readonly AnswerLine[]>([]);
export const waiting = signal(0);
export const connection = signal<'unknown' | SyncResult>('unknown');

const UNSET: Settings = {
  changedAt: 0,
  assessmentAt: null,
  minutesADay: null,
  newSkillsADay: null,
  placement: null,
};
export const settings = signal<Settings>(UNSET);

/** Seconds until the next try, doubling from the first to the last. */
const RETRY_FIRST = 2;
const RETRY_LAST = 300;

/** Asks in somebody's name: where somebody else is signed in meanwhile, the server refuses. */
const askingAs =
  (id: string): Fetch =>
  async (path, init = {}) => {
    const response = await fetch(path, { ...init, headers: { ...inNameOf(id), ...init.headers } });
    if (response.status === 401) await meetAgain();
    return response;
  };

export class Learner {
  /** In whose name the answers are. */
  readonly id: string;
  private readonly local: Local;
  private readonly ask: Fetch;
  /** Told of answers that are new here, whichever device they come from. */
  private readonly tell: (fresh: readonly AnswerLine[]) => Promise<unknown>;
  private running: Promise<void> | undefined;
  private again = false;
  /** Everything is being erased: nothing is sent or fetched any more. */
  private stopped = false;
  private retry = RETRY_FIRST;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(local: Local, id: string, tell: (fresh: readonly AnswerLine[]) => Promise<unknown>) {
    this.local = local;
    this.id = id;
    this.ask = askingAs(id);
    this.tell = tell;
  }

  /** Reads what is on this device. */
  async load(): Promise<void> {
    // The page was left in the middle of it: what was to go, goes.
    if (await this.local.value('erasing')) await this.local.erase();
    answers.value = await this.local.lines();
    waiting.value = await this.local.waiting();
    settings.value = { ...UNSET, ...(await this.local.value('settings')) };
    await this.tell(answers.value);
  }

  /** From now on what waits is sent and what is new elsewhere fetched: now, after each answer, when the network is back. */
  keepInStep(): void {
    addEventListener('online', () => this.sync());
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') this.sync();
    });
    this.sync();
  }

  /** Keeps an answer; it is on this device when this resolves, and on its way to the server. */
  async keep(answer: AnswerRecord): Promise<void> {
    await this.local.keep(answer);
    this.takeIn([answer]);
    waiting.value = await this.local.waiting();
    this.sync();
  }

  async change(wanted: Partial<Settings>): Promise<void> {
    // Always later than what it replaces, also where a clock was put back.
    const changedAt = Math.max(Date.now(), settings.value.changedAt + 1);
    settings.value = { ...settings.value, ...wanted, changedAt };
    await this.local.setValue('settings', settings.value);
    this.sync();
  }

  /**
   * Erases everything about the learner: on the server, then on this device. Where the server can't be asked, nothing is
   * erased.
   *
   * @throws Error with words for a person
   */
  async erase(): Promise<void> {
    this.stopped = true;
    clearTimeout(this.timer);
    await this.running;
    const { eraseAtServer } = await import('./local/erase.ts');
    await this.local.setValue('erasing', true);
    const refused = await eraseAtServer(this.ask, this.id);
    if (refused !== undefined) {
      await this.local.remove('erasing');
      this.stopped = false;
      this.sync();
      throw new Error(refused);
    }
    await this.local.erase();
  }

  /** Starts sending and fetching, or once more when it is under way. */
  sync(): void {
    clearTimeout(this.timer);
    if (this.stopped) return;
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
    // Fetched when it is wanted first: the first question doesn't wait for it.
    const result = await import('./local/sync.ts')
      .then(({ synchronise }) =>
        synchronise(this.local, this.ask, {
          answers: (fresh) => this.takeIn(fresh),
          settings: (newer) => {
            settings.value = newer;
          },
        }),
      )
      .catch(() => 'offline' as const);
    connection.value = result;
    waiting.value = await this.local.waiting();
    this.retry = result === 'done' ? RETRY_FIRST : Math.min(RETRY_LAST, this.retry * 2);
    if (result === 'offline') this.timer = setTimeout(() => this.sync(), this.retry * 1000);
  }

  private takeIn(fresh: readonly AnswerRecord[]): void {
    const known = new Set(answers.value.map(({ id }) => id));
    const unknown = fresh.filter(({ id }) => !known.has(id)).map(lineOf);
    if (unknown.length === 0) return;
    answers.value = [...answers.value, ...unknown].sort((one, other) => one.at - other.at);
    this.tell(unknown).catch(() => undefined);
  }
}
