/** What is kept on this device: every answer, what has not arrived at the server yet, and the bank for days offline. */
import type { DBSchema, IDBPTransaction, StoreNames } from 'idb';
import type { Bank } from '../../../shared/bank.ts';
import type { GuardedCircuits } from '../../../shared/homework-views.ts';
import type { IssuedQuestion } from '../../../shared/issued.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Settings } from '../../../shared/settings.ts';
import type { Given, PlacingAnswer, Task } from '../../practice/index.ts';
import type { Tried } from '../guard.ts';
import { type AnswerLine, lineOf } from './answer-line.ts';
import { DeviceStore, NotKept } from './device-store.ts';

interface Schema extends DBSchema {
  /** All answers of this learner, from this device and others, by id. */
  answers: { key: string; value: AnswerRecord; indexes: { 'by-time': number } };
  /** The same in short. */
  lines: { key: string; value: AnswerLine; indexes: { 'by-time': number } };
  /** Answers given here that no server has acknowledged, in the order in which they were given. */
  waiting: { key: number; value: { id: string } };
  /** One value a name. */
  values: { key: string; value: unknown };
}

export interface ValueTypes {
  bank: { etag: string | null; bank: Bank };
  settings: Settings;
  /** What has been fetched from the server: which history, and up to which number. */
  fetched: { history: string | null; last: number };
  theme: 'light' | 'dark';
  /** The question that is open, so that a reload brings it back as it was. */
  open: OpenQuestion;
  /** A placement under way. */
  placing: readonly PlacedAnswer[] | null;
  /** Circuits of own open papers, as the server told of them last. */
  guarded: GuardedCircuits['papers'];
  /** Such circuits that were to be marked or run here; the server hasn't been told yet. */
  tried: readonly Tried[];
  /** Questions issued to the learner that weren't put yet, in their order. */
  supply: readonly IssuedQuestion[];
  /** Everything about the learner is to go, and may not be gone yet. */
  erasing: true;
}

/** One answer of a placement; by its id it counts once. */
export interface PlacedAnswer extends PlacingAnswer {
  readonly id: string;
}

/** A question as it stands before the learner. */
export interface OpenQuestion {
  readonly task: Task;
  readonly number: number;
  readonly recent: readonly string[];
  readonly chosen: readonly (readonly [string, string])[];
  readonly hinted: boolean;
  readonly secondsUsed: number;
  /** The answer, once it has been given. */
  readonly given?: Given;
}

type Writing<N extends StoreNames<Schema>> = IDBPTransaction<Schema, N[], 'readwrite'>;

/** An answer in line for the server, with its place there. */
export interface InLine {
  readonly key: number;
  readonly answer: AnswerRecord;
}

const putIn = (transaction: Writing<'answers' | 'lines'>, answer: AnswerRecord): Promise<unknown> =>
  Promise.all([
    transaction.objectStore('answers').put(answer),
    transaction.objectStore('lines').put(lineOf(answer)),
  ]);

const putInLine = (
  transaction: Writing<'answers' | 'lines' | 'waiting'>,
  answer: AnswerRecord,
): Promise<unknown> =>
  Promise.all([
    putIn(transaction as never, answer),
    transaction.objectStore('waiting').add({ id: answer.id }),
  ]);

export class Local {
  private readonly store: DeviceStore<Schema>;
  /** Answers given since the page was opened that have not arrived: a store that the browser throws away gets them back. */
  private readonly given = new Map<string, AnswerRecord>();
  /** Told when the browser has thrown away what was kept here: how many answers still wait after that. */
  whenEvicted: (left: number) => void = () => undefined;
  /** Told of answers that wait and aren't there any more. */
  whenGone: (count: number) => void = () => undefined;

  private constructor(name: string) {
    this.store = new DeviceStore<Schema>({
      name,
      version: 2,
      async upgrade(made, from, _to, transaction) {
        if (from < 1) {
          made.createObjectStore('answers', { keyPath: 'id' }).createIndex('by-time', 'at');
          made.createObjectStore('waiting', { autoIncrement: true });
          made.createObjectStore('values');
        }
        const lines = made.createObjectStore('lines', { keyPath: 'id' });
        lines.createIndex('by-time', 'at');
        // In one go: waiting for each line takes a hundred times as long.
        const answers = await transaction.objectStore('answers').getAll();
        await Promise.all(answers.map((answer) => lines.put(lineOf(answer))));
      },
      madeAnew: async (db) => {
        const transaction = db.transaction(['answers', 'lines', 'waiting'], 'readwrite');
        await Promise.all([
          ...[...this.given.values()].map((answer) => putInLine(transaction, answer)),
          transaction.done,
        ]);
        this.whenEvicted(this.given.size);
      },
    });
  }

  /**
   * Opens the device's store.
   *
   * @throws Error with words for a person where the browser refuses one (some private windows), or another tab is in the way
   */
  static async open(name = 'polewise'): Promise<Local> {
    const local = new Local(name);
    await local.store.open().catch((error: unknown) => {
      throw error instanceof NotKept
        ? error
        : new Error(
            'This browser does not let the page keep anything, so no answer would be kept. A private window may be why.',
          );
    });
    return local;
  }

  /** Keeps an answer given here and puts it in line for the server, both or neither. */
  async keep(answer: AnswerRecord): Promise<void> {
    await this.store.change(['answers', 'lines', 'waiting'], async (transaction) => {
      const known = await transaction.objectStore('answers').getKey(answer.id);
      if (known === undefined) await putInLine(transaction, answer);
    });
    this.given.set(answer.id, answer);
  }

  /** Takes in answers that came from the server. */
  takeIn(answers: readonly AnswerRecord[]): Promise<void> {
    return this.store.change(['answers', 'lines'], async (transaction) => {
      await Promise.all(answers.map((answer) => putIn(transaction, answer)));
    });
  }

  /** All answers in short, in the order of their time. */
  lines(): Promise<AnswerLine[]> {
    return this.store.use((db) => db.getAllFromIndex('lines', 'by-time'));
  }

  /** The first answers in line. What waits and isn't there any more leaves the line, and is told. */
  async inLine(most: number): Promise<InLine[]> {
    const { found, gone } = await this.store.change(['answers', 'waiting'], async (transaction) => {
      const waiting = transaction.objectStore('waiting');
      const [keys, entries] = await Promise.all([
        waiting.getAllKeys(undefined, most),
        waiting.getAll(undefined, most),
      ]);
      const answers = await Promise.all(entries.map(({ id }) => transaction.objectStore('answers').get(id)));
      const there: InLine[] = [];
      const missing = keys.filter((key, at) => {
        const answer = answers[at];
        if (answer) there.push({ key, answer });
        return !answer;
      });
      await Promise.all(missing.map((key) => waiting.delete(key)));
      return { found: there, gone: missing.length };
    });
    if (gone > 0) this.whenGone(gone);
    return found.length === 0 && gone > 0 ? this.inLine(most) : found;
  }

  waiting(): Promise<number> {
    return this.store.use((db) => db.count('waiting'));
  }

  /** Takes them out of the line. */
  async arrived(sent: readonly InLine[]): Promise<void> {
    await this.store.change(['waiting'], async (transaction) => {
      const waiting = transaction.objectStore('waiting');
      await Promise.all(sent.map(({ key }) => waiting.delete(key)));
    });
    for (const { answer } of sent) this.given.delete(answer.id);
  }

  /** Puts every answer in line again: the server has another history than the one it was told. */
  sendAllAgain(): Promise<void> {
    return this.store.change(['lines', 'waiting'], async (transaction) => {
      const waiting = transaction.objectStore('waiting');
      await waiting.clear();
      const lines = await transaction.objectStore('lines').index('by-time').getAll();
      await Promise.all(lines.map(({ id }) => waiting.add({ id })));
    });
  }

  async value<K extends keyof ValueTypes>(name: K): Promise<ValueTypes[K] | undefined> {
    return (await this.store.use((db) => db.get('values', name))) as ValueTypes[K] | undefined;
  }

  async setValue<K extends keyof ValueTypes>(name: K, value: ValueTypes[K]): Promise<void> {
    await this.store.use((db) => db.put('values', value, name));
  }

  async remove(name: keyof ValueTypes): Promise<void> {
    await this.store.use((db) => db.delete('values', name));
  }

  /** Removes everything about the learner from this device, all of it or nothing. The questions stay. */
  async erase(): Promise<void> {
    await this.store.change(['answers', 'lines', 'waiting', 'values'], async (transaction) => {
      const bank = await transaction.objectStore('values').get('bank');
      for (const name of ['answers', 'lines', 'waiting', 'values'] as const)
        await transaction.objectStore(name).clear();
      if (bank !== undefined) await transaction.objectStore('values').put(bank, 'bank');
    });
    this.given.clear();
  }

  close(): void {
    this.store.close();
  }
}
