/** One store of this device. Closed by another tab, by the browser, or thrown away by it, it is opened again when it is wanted. */
import {
  type DBSchema,
  type IDBPDatabase,
  type IDBPTransaction,
  type OpenDBCallbacks,
  openDB,
  type StoreNames,
} from 'idb';
import { PageError } from '../page-error.ts';

type Writing<S extends DBSchema> = IDBPTransaction<S, StoreNames<S>[], 'readwrite'>;

/** `T`: what is given here and waits for the server. */
export interface Form<S extends DBSchema, T> {
  readonly name: string;
  readonly version: number;
  readonly upgrade: NonNullable<OpenDBCallbacks<S>['upgrade']>;
  /** Puts in line what was given, in these of its stores. */
  readonly inLine: readonly StoreNames<S>[];
  putInLine(transaction: Writing<S>, given: T): Promise<unknown>;
}

/** The device's store didn't do what it was asked; the message is for a person. */
export class NotKept extends PageError {}

function notKept(error: unknown): NotKept {
  if (error instanceof NotKept) return error;
  switch ((error as Error | undefined)?.name) {
    case 'QuotaExceededError':
      return new NotKept(({ frame }) => frame.device.full);
    case 'VersionError':
      return new NotKept(({ frame }) => frame.device.renewedElsewhere);
    default:
      return new NotKept(({ frame }) => frame.device.notNow);
  }
}

export class DeviceStore<S extends DBSchema, T> {
  /** Given since the page was opened and not arrived, by what makes it count once: a store that the browser throws away gets it back. */
  readonly given = new Map<string, T>();
  /** Told when the browser has thrown away what was kept here: how much still waits after that. */
  whenEvicted: (left: number) => void = () => undefined;
  private readonly form: Form<S, T>;
  private db: IDBPDatabase<S> | undefined;
  private opening: Promise<IDBPDatabase<S>> | undefined;
  private wasOpen = false;
  private ended = false;

  constructor(form: Form<S, T>) {
    this.form = form;
  }

  /** Opens it where it isn't open. The browser's own error where it can't be, and `NotKept` where another tab is in the way. */
  async open(): Promise<IDBPDatabase<S>> {
    if (this.db) return this.db;
    this.opening ??= this.openNow().finally(() => {
      this.opening = undefined;
    });
    return this.opening;
  }

  private async openNow(): Promise<IDBPDatabase<S>> {
    const { name, version, upgrade } = this.form;
    let blocked: () => void = () => undefined;
    const inTheWay = new Promise<never>((_, reject) => {
      blocked = () => reject(new NotKept(({ frame }) => frame.device.olderElsewhere));
    });
    let anew = false;
    const opening = openDB<S>(name, version, {
      upgrade(made, from, ...rest) {
        anew = from === 0;
        return upgrade(made, from, ...rest);
      },
      blocked: () => blocked(),
      // Another tab wants to change the store, or the browser to throw it away: this one lets go of it.
      blocking: (_from, _to, event) => {
        (event.target as IDBDatabase).close();
        this.db = undefined;
      },
      terminated: () => {
        this.db = undefined;
      },
    });
    const db = await Promise.race([opening, inTheWay]);
    if (anew && this.wasOpen) await this.putBack(db);
    this.wasOpen = true;
    this.db = db;
    return db;
  }

  /** It had been open here and was gone: this one has been made in its place. */
  private async putBack(db: IDBPDatabase<S>): Promise<void> {
    const { inLine, putInLine } = this.form;
    const transaction = db.transaction([...inLine], 'readwrite');
    await Promise.all([
      ...[...this.given.values()].map((given) => putInLine(transaction, given)),
      transaction.done,
    ]);
    this.whenEvicted(this.given.size);
  }

  /**
   * Does something with the store; once more, on a fresh connection, where it was found closed.
   *
   * @throws NotKept with words for a person
   */
  async use<T>(work: (db: IDBPDatabase<S>) => Promise<T>): Promise<T> {
    try {
      const db = await this.open();
      try {
        return await work(db);
      } catch (error) {
        // Closed without a word, by either side: nothing can be begun on it any more.
        if ((error as Error).name === 'InvalidStateError' && this.db === db) this.db = undefined;
        if (this.db === db || this.ended) throw error;
        return await work(await this.open());
      }
    } catch (error) {
      throw notKept(error);
    }
  }

  /** Changes it, all of it or nothing; what has been changed is on the disk when this resolves. */
  change<T, N extends StoreNames<S>>(
    names: N[],
    work: (transaction: IDBPTransaction<S, N[], 'readwrite'>) => Promise<T>,
  ): Promise<T> {
    return this.use(async (db) => {
      const transaction = db.transaction(names, 'readwrite', { durability: 'strict' });
      // Told below, by its own error.
      transaction.done.catch(() => undefined);
      try {
        const result = await work(transaction);
        await transaction.done;
        return result;
      } catch (error) {
        throw transaction.error ?? error;
      }
    });
  }

  close(): void {
    this.ended = true;
    this.db?.close();
  }
}
