/**
 * What is kept on this device of homework: answers that wait for the server, and papers to go on with when there is no
 * network. Whose it is stands in every row: several people may use one device.
 */
import type { DBSchema } from 'idb';
import type { KeptSave, LearnerSet, PaperView } from '../../../../shared/homework-views.ts';
import type { Answer } from '../../../../shared/question.ts';
import { PageError } from '../../page-error.ts';
import { DeviceStore } from '../device-store.ts';
import { inOrder, leave } from '../line.ts';

/** An answer as it was given here; its id makes it count once. */
export interface GivenAnswer {
  readonly person: string;
  readonly paper: string;
  readonly id: string;
  readonly item: number;
  readonly answer: Answer;
  /** What stands chosen, so that a reload brings it back. */
  readonly chosen: readonly (readonly [string, string])[];
  readonly secondsUsed: number;
}

export interface WaitingAnswer extends GivenAnswer {
  /** Its place in line. */
  readonly key: number;
}

/** An answer that the server will never keep, and why. */
export interface RefusedAnswer {
  readonly person: string;
  readonly paper: string;
  readonly item: number;
  readonly code: string;
  readonly message: string;
}

interface Schema extends DBSchema {
  waiting: { key: number; value: GivenAnswer; indexes: { 'by-person': string } };
  refused: { key: number; value: RefusedAnswer };
  papers: { key: [string, string]; value: { person: string; id: string; view: PaperView } };
  lists: { key: string; value: readonly LearnerSet[] };
}

export class KeptHomework {
  readonly store: DeviceStore<Schema, GivenAnswer>;

  private constructor(name: string) {
    this.store = new DeviceStore({
      name,
      version: 1,
      async upgrade(made) {
        made.createObjectStore('waiting', { autoIncrement: true }).createIndex('by-person', 'person');
        made.createObjectStore('refused', { autoIncrement: true });
        made.createObjectStore('papers', { keyPath: ['person', 'id'] });
        made.createObjectStore('lists');
      },
      inLine: ['waiting'],
      putInLine: (transaction, given) => transaction.objectStore('waiting').add(given),
    });
  }

  /** @throws Error with words for a person where the browser keeps nothing */
  static async open(name = 'polewise-homework'): Promise<KeptHomework> {
    const kept = new KeptHomework(name);
    await kept.store.open().catch(() => {
      throw new PageError(({ homeworkTold }) => homeworkTold.keepsNothing);
    });
    return kept;
  }

  /** Puts an answer in line; an earlier one to the same item that still waits is replaced by it. */
  async give(given: GivenAnswer): Promise<void> {
    await this.store.change(['waiting'], async (transaction) => {
      const waiting = transaction.objectStore('waiting');
      for (
        let cursor = await waiting.index('by-person').openCursor(given.person);
        cursor;
        cursor = await cursor.continue()
      )
        if (cursor.value.paper === given.paper && cursor.value.item === given.item) await cursor.delete();
      await waiting.add(given);
    });
    this.store.given.set(`${given.paper} ${given.item}`, given);
  }

  /** What waits of one person, in the order in which it was given. */
  waitingOf(person: string): Promise<readonly WaitingAnswer[]> {
    return this.store.use(async (db) => {
      const line = await inOrder(db.transaction('waiting').store);
      return line.flatMap(({ key, value }) => (value.person === person ? [{ ...value, key }] : []));
    });
  }

  /** The server has these: they leave the line, and stand among what was saved on the paper as it is kept here. */
  async arrived(
    person: string,
    paper: string,
    sent: readonly { key: number; save: KeptSave }[],
  ): Promise<void> {
    await this.store.change(['waiting', 'papers'], async (transaction) => {
      await leave(transaction.objectStore('waiting'), sent);
      const kept = await transaction.objectStore('papers').get([person, paper]);
      if (!kept) return;
      const known = new Set(kept.view.saved.map(({ id }) => id));
      const fresh = sent.map(({ save }) => save).filter(({ id }) => !known.has(id));
      const saved = [...kept.view.saved, ...fresh].sort((one, other) => one.number - other.number);
      await transaction.objectStore('papers').put({ ...kept, view: { ...kept.view, saved } });
    });
    for (const { save } of sent) {
      const place = `${paper} ${save.item}`;
      if (this.store.given.get(place)?.id === save.id) this.store.given.delete(place);
    }
  }

  async refuse(keys: readonly number[], refused: readonly RefusedAnswer[]): Promise<void> {
    await this.store.change(['waiting', 'refused'], async (transaction) => {
      for (const key of keys) await transaction.objectStore('waiting').delete(key);
      for (const each of refused) await transaction.objectStore('refused').add(each);
    });
    for (const { paper, item } of refused) this.store.given.delete(`${paper} ${item}`);
  }

  async refusedOf(person: string, paper: string): Promise<readonly RefusedAnswer[]> {
    const all = await this.store.use((db) => db.getAll('refused'));
    return all.filter((each) => each.person === person && each.paper === paper);
  }

  /** How many of one person's answers were refused, by paper. */
  async refusedCounts(person: string): Promise<ReadonlyMap<string, number>> {
    const counts = new Map<string, number>();
    for (const each of await this.store.use((db) => db.getAll('refused')))
      if (each.person === person) counts.set(each.paper, (counts.get(each.paper) ?? 0) + 1);
    return counts;
  }

  async paper(person: string, id: string): Promise<PaperView | undefined> {
    return (await this.store.use((db) => db.get('papers', [person, id])))?.view;
  }

  async keepPaper(person: string, view: PaperView): Promise<void> {
    await this.store.use((db) => db.put('papers', { person, id: view.id, view }));
  }

  list(person: string): Promise<readonly LearnerSet[] | undefined> {
    return this.store.use((db) => db.get('lists', person));
  }

  async keepList(person: string, sets: readonly LearnerSet[]): Promise<void> {
    await this.store.use((db) => db.put('lists', sets, person));
  }

  /** Removes everything of one person from this device, all of it or nothing. */
  async eraseOf(person: string): Promise<void> {
    await this.store.change(['waiting', 'refused', 'papers', 'lists'], async (transaction) => {
      for (const name of ['waiting', 'refused', 'papers'] as const) {
        const store = transaction.objectStore(name);
        for (let cursor = await store.openCursor(); cursor; cursor = await cursor.continue())
          if (cursor.value.person === person) await cursor.delete();
      }
      await transaction.objectStore('lists').delete(person);
    });
    this.store.given.clear();
  }

  close(): void {
    this.store.close();
  }
}
