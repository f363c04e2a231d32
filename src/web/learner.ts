/** What the page knows of the learner: answers, settings, and what waits for the server. */
import { computed, signal } from '@preact/signals';
import type { AnswerLine, AnswerRecord } from '../../shared/practice.ts';
import type { Settings } from '../../shared/settings.ts';
import { changeSettings, mergeSettings } from '../memory/merge-settings.ts';
import { lineOf } from '../practice/line.ts';
import { inNameOf } from './api.ts';
import type { Ahead, Local } from './local/database.ts';
import { NotKept } from './local/device-store.ts';
import { inStep } from './local/in-step.ts';
import { Rounds } from './local/rounds.ts';
import type { Coming, Fetch, SyncResult } from './local/sync.ts';
import { refreshMe } from './me.ts';
import { isFromNewer, renewed } from './renewed.ts';

export const answers = signal<readonly AnswerLine[]>([]);
const elsewhere = signal(0);
/** How many there are, here or still on their way. */
export const answered = computed(() => Math.max(answers.value.length, elsewhere.value));
export const waiting = signal(0);
/** Answers that the browser threw away before they were sent. */
export const gone = signal(0);
/** What other devices have sent is being fetched, and takes a while. */
export const coming = signal<Coming | null>(null);
/** unkept: the device's store fails. */
export const connection = signal<'unknown' | 'unkept' | SyncResult>('unknown');

const UNSET: Settings = {
  changedAt: 0,
  assessmentAt: null,
  minutesADay: null,
  newSkillsADay: null,
  placement: null,
};
export const settings = signal<Settings>(UNSET);

/** Seconds between two tries at most. */
const RETRY_LAST = 300;

/** Asks in somebody's name: where somebody else is signed in meanwhile, the server refuses. */
const askingAs =
  (id: string): Fetch =>
  async (path, init = {}) => {
    const response = await fetch(path, { ...init, headers: { ...inNameOf(id), ...init.headers } });
    isFromNewer(response);
    if (response.status === 401) await refreshMe();
    return response;
  };

/** What the engine is told. */
export interface Fresh {
  readonly answers: readonly AnswerLine[];
  readonly ahead?: Ahead | null;
  /** Nothing that was told before holds any more. */
  readonly anew?: boolean;
}

/**
 * Whether a reply is what it should be, as far as the first question needs to know: the schemas come after it. What it says of
 * the memory goes when the answers themselves are here.
 */
const isAhead = (said: unknown): said is Ahead =>
  Object.values((said as Ahead | undefined)?.recalls ?? {}).some(({ kind }) => kind === 'begun');
const isSettings = (said: unknown): said is Settings => ((said as Settings | undefined)?.changedAt ?? 0) > 0;

const erasing = () => import('./local/erase.ts');

export class Learner {
  /** In whose name the answers are. */
  readonly id: string;
  private readonly local: Local;
  private readonly ask: Fetch;
  /** Told of answers that are new here, whichever device they come from, and of what is known before they come. */
  private readonly tell: (fresh: Fresh) => Promise<unknown>;
  private readonly exchanging = new Rounds(
    () => this.exchange(),
    (result) => result !== 'done',
    RETRY_LAST,
  );
  /** Nothing is in the store and nothing was ever fetched to it: what was practised may be elsewhere. */
  private strange = false;

  constructor(local: Local, id: string, tell: (fresh: Fresh) => Promise<unknown>) {
    this.local = local;
    this.id = id;
    this.ask = askingAs(id);
    this.tell = tell;
    local.whenGone = (count) => {
      gone.value += count;
    };
    local.store.whenEvicted = (left) => {
      gone.value += Math.max(0, waiting.value - left);
      waiting.value = left;
      if (settings.value.changedAt > 0) local.setValue('settings', settings.value).catch(() => undefined);
      this.sync();
    };
  }

  /** Reads what is on this device. */
  async load(): Promise<void> {
    // The page was left in the middle of it: what was to go, goes.
    if (await this.local.value('erasing')) await (await erasing()).eraseHere(this.local, this.id);
    const lines = await this.local.value('lines');
    this.local.told = lines;
    answers.value = await this.local.lines();
    waiting.value = await this.local.waiting();
    settings.value = { ...UNSET, ...(await this.local.value('settings')) };
    const ahead = await this.local.value('ahead');
    const fetched = lines ?? (await this.local.value('fetched'));
    elsewhere.value = ahead?.last ?? 0;
    this.strange = answers.value.length === 0 && !ahead && !fetched;
    await this.tell({ answers: answers.value, ahead: ahead ?? null });
  }

  /**
   * Where somebody is new on this device, what a right question needs is asked for before one is chosen: how the learner stands
   * after what was practised elsewhere, and what was set there. Resolves when it is here, or can't be had for so many
   * milliseconds; undefined where there is nothing to wait for.
   */
  catchUp(patience: number): Promise<unknown> | undefined {
    if (!this.strange || !navigator.onLine) return undefined;
    const signal = AbortSignal.timeout(patience);
    const said = (path: string): Promise<unknown> =>
      this.ask(path, { signal })
        .then((response) => (response.ok ? response.json() : undefined))
        .catch(() => undefined);
    return Promise.all([said('/api/recalls'), said('/api/settings')])
      .then(async ([states, set]) => {
        if (isSettings(set)) await this.takeSettings(mergeSettings(settings.value, set));
        if (isAhead(states)) await this.takeAhead(states);
      })
      .catch(() => undefined);
  }

  private async takeSettings(newer: Settings): Promise<void> {
    settings.value = newer;
    await this.local.setValue('settings', newer);
  }

  private async takeAhead(states: Ahead): Promise<void> {
    await this.local.setValue('ahead', states);
    elsewhere.value = states.last;
    await this.tell({ answers: [], ahead: states });
  }

  /** From now on what waits is sent and what is new elsewhere fetched: now, after each answer, when the network is back. */
  keepInStep(): void {
    inStep(() => this.sync());
  }

  /** Keeps an answer; it is on this device when this resolves, and on its way to the server. */
  async keep(answer: AnswerRecord): Promise<void> {
    await this.local.keep(answer);
    if (!answers.value.some(({ id }) => id === answer.id)) this.takeIn([lineOf(answer)]);
    waiting.value = await this.local.waiting();
    this.sync();
  }

  async change(wanted: Parameters<typeof changeSettings>[1]): Promise<void> {
    settings.value = changeSettings(settings.value, wanted, Date.now());
    await this.local.setValue('settings', settings.value);
    this.sync();
  }

  /**
   * Erases everything about the learner: on the server, then on this device, homework that is kept here included. Where the
   * server can't be asked, or has not got all answers to homework, nothing is erased.
   *
   * @throws Error with words for a person
   */
  async erase(): Promise<void> {
    const { eraseLearner } = await erasing();
    await this.end();
    const refused = await eraseLearner(this.local, this.ask, this.id);
    if (refused === undefined) return;
    this.exchanging.goOn();
    throw new Error(refused);
  }

  /** From now on nothing is sent or fetched; resolves when nothing is under way any more. */
  end(): Promise<void> {
    return this.exchanging.end();
  }

  /** Starts sending and fetching, or once more when it is under way. */
  sync(): void {
    this.exchanging.run().catch(() => undefined);
  }

  private async exchange(): Promise<typeof connection.value> {
    // Fetched when it is wanted first: the first question doesn't wait for it.
    const result = await import('./local/sync.ts')
      .then(({ synchronise }) =>
        synchronise(this.local, this.ask, {
          ahead: (ahead) => {
            elsewhere.value = ahead?.last ?? 0;
            this.tell({ answers: [], ahead }).catch(() => undefined);
          },
          lines: (fresh) => this.takeIn(fresh),
          anew: (all) => {
            answers.value = all;
            this.tell({ answers: all, anew: true }).catch(() => undefined);
          },
          coming: (how) => {
            coming.value = how;
          },
          settings: (newer) => {
            settings.value = newer;
          },
        }),
      )
      .catch((error: unknown) => (error instanceof NotKept ? 'unkept' : 'offline'));
    coming.value = null;
    connection.value = result;
    if (result === 'too-old') renewed.value = result;
    // Where the store says nothing, what was known of it holds.
    waiting.value = await this.local.waiting().catch(() => waiting.value);
    return result;
  }

  private takeIn(fresh: readonly AnswerLine[]): void {
    if (fresh.length === 0) return;
    const all = new Map(answers.value.map((line) => [line.id, line]));
    for (const line of fresh) all.set(line.id, line);
    answers.value = [...all.values()].sort((one, other) => one.at - other.at);
    this.tell({ answers: fresh }).catch(() => undefined);
  }
}
