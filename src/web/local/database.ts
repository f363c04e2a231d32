/** What is kept on this device: every answer, what has not arrived at the server yet, and the bank for days offline. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Bank } from '../../../shared/bank.ts';
import type { GuardedCircuits } from '../../../shared/homework-views.ts';
import type { IssuedQuestion } from '../../../shared/issued.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Settings } from '../../../shared/settings.ts';
import type { Given, PlacingAnswer, Task } from '../../practice/index.ts';
import type { Tried } from '../guard.ts';
import { type AnswerLine, lineOf } from './answer-line.ts';

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

export class Local {
  private readonly db: IDBPDatabase<Schema>;

  private constructor(db: IDBPDatabase<Schema>) {
    this.db = db;
  }

  /**
   * Opens the device's store.
   *
   * @throws Error with words for a person where the browser refuses one (some private windows), or another tab is in the way
   */
  static async open(name = 'polewise'): Promise<Local> {
    let blocked: () => void = () => undefined;
    const inTheWay = new Promise<never>((_, reject) => {
      blocked = () =>
        reject(new Error('The page is open in another tab as it was before it was renewed. Close that tab.'));
    });
    const opening = openDB<Schema>(name, 2, {
      async upgrade(made, from, _to, transaction) {
        if (from < 1) {
          made.createObjectStore('answers', { keyPath: 'id' }).createIndex('by-time', 'at');
          made.createObjectStore('waiting', { autoIncrement: true });
          made.createObjectStore('values');
        }
        const lines = made.createObjectStore('lines', { keyPath: 'id' });
        lines.createIndex('by-time', 'at');
        for (const answer of await transaction.objectStore('answers').getAll())
          await lines.put(lineOf(answer));
      },
      blocked: () => blocked(),
      // A newer page in another tab wants to change the store: this one lets go of it.
      blocking: (_from, _to, event) => (event.target as IDBDatabase).close(),
    }).catch(() => {
      throw new Error(
        'This browser does not let the page keep anything, so no answer would be kept. A private window may be why.',
      );
    });
    return new Local(await Promise.race([opening, inTheWay]));
  }

  /** Keeps an answer given here and puts it in line for the server, both or neither. */
  async keep(answer: AnswerRecord): Promise<void> {
    const transaction = this.db.transaction(['answers', 'lines', 'waiting'], 'readwrite', {
      durability: 'strict',
    });
    const known = await transaction.objectStore('answers').get(answer.id);
    if (!known) {
      await transaction.objectStore('answers').put(answer);
      await transaction.objectStore('lines').put(lineOf(answer));
      await transaction.objectStore('waiting').add({ id: answer.id });
    }
    await transaction.done;
  }

  /** Takes in answers that came from the server. */
  async takeIn(answers: readonly AnswerRecord[]): Promise<void> {
    const transaction = this.db.transaction(['answers', 'lines'], 'readwrite');
    for (const answer of answers) {
      await transaction.objectStore('answers').put(answer);
      await transaction.objectStore('lines').put(lineOf(answer));
    }
    await transaction.done;
  }

  /** All answers in short, in the order of their time. */
  lines(): Promise<AnswerLine[]> {
    return this.db.getAllFromIndex('lines', 'by-time');
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
    const transaction = this.db.transaction(['lines', 'waiting'], 'readwrite');
    await transaction.objectStore('waiting').clear();
    for (const { id } of await transaction.objectStore('lines').index('by-time').getAll()) {
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

  /** Removes everything about the learner from this device, all of it or nothing. The questions stay. */
  async erase(): Promise<void> {
    const transaction = this.db.transaction(['answers', 'lines', 'waiting', 'values'], 'readwrite', {
      durability: 'strict',
    });
    const bank = await transaction.objectStore('values').get('bank');
    for (const name of ['answers', 'lines', 'waiting', 'values'] as const)
      await transaction.objectStore(name).clear();
    if (bank !== undefined) await transaction.objectStore('values').put(bank, 'bank');
    await transaction.done;
  }

  close(): void {
    this.db.close();
  }
}
