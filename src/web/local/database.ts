/** What is kept on this device: every answer, what has not arrived at the server yet, and the bank for days offline. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Bank } from '../../../shared/bank.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Settings } from '../../../shared/settings.ts';
import type { Given, PlacingAnswer, Task } from '../../practice/index.ts';

interface Schema extends DBSchema {
  /** All answers of this learner, from this device and others, by id. */
  answers: { key: string; value: AnswerRecord; indexes: { 'by-time': number } };
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

export class Local {
  private readonly db: IDBPDatabase<Schema>;

  private constructor(db: IDBPDatabase<Schema>) {
    this.db = db;
  }

  /** Opens the device's store; rejects where the browser refuses one (some private windows). */
  static async open(name = 'polewise'): Promise<Local> {
    const db = await openDB<Schema>(name, 1, {
      upgrade(made) {
        made.createObjectStore('answers', { keyPath: 'id' }).createIndex('by-time', 'at');
        made.createObjectStore('waiting', { autoIncrement: true });
        made.createObjectStore('values');
      },
    });
    return new Local(db);
  }

  /** Keeps an answer given here and puts it in line for the server, both or neither. */
  async keep(answer: AnswerRecord): Promise<void> {
    const transaction = this.db.transaction(['answers', 'waiting'], 'readwrite', { durability: 'strict' });
    const known = await transaction.objectStore('answers').get(answer.id);
    if (!known) {
      await transaction.objectStore('answers').put(answer);
      await transaction.objectStore('waiting').add({ id: answer.id });
    }
    await transaction.done;
  }

  /** Takes in answers that came from the server. */
  async takeIn(answers: readonly AnswerRecord[]): Promise<void> {
    const transaction = this.db.transaction('answers', 'readwrite');
    for (const answer of answers) await transaction.store.put(answer);
    await transaction.done;
  }

  answers(): Promise<AnswerRecord[]> {
    return this.db.getAllFromIndex('answers', 'by-time');
  }

  /** The first answers in line, with the keys that take them out of it. */
  async inLine(most: number): Promise<{ key: number; answer: AnswerRecord }[]> {
    const transaction = this.db.transaction(['answers', 'waiting']);
    const keys = await transaction.objectStore('waiting').getAllKeys(undefined, most);
    const entries = await transaction.objectStore('waiting').getAll(undefined, most);
    const found: { key: number; answer: AnswerRecord }[] = [];
    for (const [index, { id }] of entries.entries()) {
      const answer = await transaction.objectStore('answers').get(id);
      if (answer) found.push({ key: keys[index]!, answer });
    }
    await transaction.done;
    return found;
  }

  waiting(): Promise<number> {
    return this.db.count('waiting');
  }

  async arrived(keys: readonly number[]): Promise<void> {
    const transaction = this.db.transaction('waiting', 'readwrite');
    for (const key of keys) await transaction.store.delete(key);
    await transaction.done;
  }

  /** Puts every answer in line again: the server has another history than the one it was told. */
  async sendAllAgain(): Promise<void> {
    const transaction = this.db.transaction(['answers', 'waiting'], 'readwrite');
    await transaction.objectStore('waiting').clear();
    for (const { id } of await transaction.objectStore('answers').index('by-time').getAll()) {
      await transaction.objectStore('waiting').add({ id });
    }
    await transaction.done;
  }

  async value<K extends keyof ValueTypes>(name: K): Promise<ValueTypes[K] | undefined> {
    return (await this.db.get('values', name)) as ValueTypes[K] | undefined;
  }

  async setValue<K extends keyof ValueTypes>(name: K, value: ValueTypes[K]): Promise<void> {
    await this.db.put('values', value, name);
  }

  async remove(name: keyof ValueTypes): Promise<void> {
    await this.db.delete('values', name);
  }

  async eraseAll(): Promise<void> {
    const transaction = this.db.transaction(['answers', 'waiting', 'values'], 'readwrite');
    for (const store of ['answers', 'waiting', 'values'] as const)
      await transaction.objectStore(store).clear();
    await transaction.done;
  }

  close(): void {
    this.db.close();
  }
}
