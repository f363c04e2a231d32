/** What is kept on this device: every answer, what has not arrived at the server yet, and the bank for days offline. */
import type { DBSchema, IDBPTransaction, StoreNames } from 'idb';
import type { Bank } from '../../../shared/bank.ts';
import type { GuardedCircuits } from '../../../shared/homework-views.ts';
import type { IssuedQuestion } from '../../../shared/issued.ts';
import type { Recall } from '../../../shared/memory.ts';
import type { AnswerLine, AnswerRecord } from '../../../shared/practice.ts';
import type { Settings } from '../../../shared/settings.ts';
import type { Given, PlacingAnswer, Task } from '../../practice/index.ts';
import { lineOf } from '../../practice/line.ts';
import { lineOfToday, withMarkOfToday } from '../../practice/older-marks.ts';
import { PageError } from '../page-error.ts';
import { DeviceStore, NotKept } from './device-store.ts';
import type { Tried } from './tried.ts';

export interface Schema extends DBSchema {
  /** Answers of this learner, from this device and others, by id. Those from others come after their lines. */
  answers: { key: string; value: AnswerRecord; indexes: { 'by-time': number } };
  /** All of them in short; as the server counts them, once it has said so. */
  lines: { key: string; value: AnswerLine; indexes: { 'by-time': number } };
  /** Answers given here that no server has acknowledged, in the order in which they were given. */
  waiting: { key: number; value: { id: string } };
  /** One value a name. */
  values: { key: string; value: unknown };
}

export interface ValueTypes {
  bank: { etag: string | null; bank: Bank };
  settings: Settings;
  /** What has been fetched from the server whole: of which history, and up to which number. */
  fetched: { history: string | null; last: number };
  /** The same of what was fetched in short, and how often its marks had been corrected. */
  lines: { history: string | null; last: number; corrections: number };
  /** How the learner stands, on a device that has not got the answers yet. */
  ahead: Ahead;
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

/** What follows from the answers of a history up to number `last`: it holds until they are here themselves. */
export interface Ahead {
  readonly history: string | null;
  readonly last: number;
  readonly recalls: Readonly<Record<string, Recall>>;
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

const putInLine = (
  transaction: IDBPTransaction<Schema, StoreNames<Schema>[], 'readwrite'>,
  answer: AnswerRecord,
): Promise<unknown> =>
  Promise.all([
    transaction.objectStore('answers').put(answer),
    transaction.objectStore('lines').put(lineOf(answer)),
    transaction.objectStore('waiting').add({ id: answer.id }),
  ]);

export class Local {
  /** For what is done with it seldom, or after the first question (exchange.ts, erase.ts). */
  readonly store: DeviceStore<Schema, AnswerRecord>;
  /** Up to where this page was told of answers in short; another tab may have fetched more since. */
  told: ValueTypes['lines'] | undefined;
  /** Told of answers that wait and aren't there any more. */
  whenGone: (count: number) => void = () => undefined;

  private constructor(name: string) {
    this.store = new DeviceStore({
      name,
      version: 4,
      async upgrade(made, from, _to, transaction) {
        if (from < 1) {
          made.createObjectStore('answers', { keyPath: 'id' }).createIndex('by-time', 'at');
          made.createObjectStore('waiting', { autoIncrement: true });
          made.createObjectStore('values');
        }
        if (from < 2) made.createObjectStore('lines', { keyPath: 'id' }).createIndex('by-time', 'at');
        // Answers were kept with English text in their marks, and lines with their ideas in words.
        const answers = transaction.objectStore('answers');
        const lines = transaction.objectStore('lines');
        const [older, short] = await Promise.all([answers.getAll(), lines.getAll()]);
        const records = older.map((answer) => withMarkOfToday(answer) as AnswerRecord);
        const known = new Set(short.map(({ id }) => id));
        // How the learner stands was told in another form; it comes again, with the answers.
        await transaction.objectStore('values').delete('ahead');
        // In one go: waiting for each of them takes a hundred times as long.
        await Promise.all([
          ...records.map((record) => answers.put(record)),
          ...records.filter(({ id }) => !known.has(id)).map((record) => lines.put(lineOf(record))),
          ...short.map((line) => lines.put(lineOfToday(line))),
        ]);
      },
      inLine: ['answers', 'lines', 'waiting'],
      putInLine,
    });
  }

  /**
   * Opens the device's store.
   *
   * @throws PageError with words for a person where the browser refuses one (some private windows), or another tab is in the way
   */
  static async open(name = 'polewise'): Promise<Local> {
    const local = new Local(name);
    await local.store.open().catch((error: unknown) => {
      throw error instanceof NotKept ? error : new PageError(({ frame }) => frame.device.refused);
    });
    return local;
  }

  /** Keeps an answer given here and puts it in line for the server, both or neither. */
  async keep(answer: AnswerRecord): Promise<void> {
    await this.store.change(['answers', 'lines', 'waiting'], async (transaction) => {
      const known = await transaction.objectStore('answers').getKey(answer.id);
      if (known === undefined) await putInLine(transaction, answer);
    });
    this.store.given.set(answer.id, answer);
  }

  /** All answers in short, in the order of their time. */
  lines(): Promise<AnswerLine[]> {
    return this.store.use((db) => db.getAllFromIndex('lines', 'by-time'));
  }

  waiting(): Promise<number> {
    return this.store.use((db) => db.count('waiting'));
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

  close(): void {
    this.store.close();
  }
}
