/** Homework as files: marks, statements, packages. */
import type { Readable } from 'node:stream';
import type { MarksRow, QtiVersion } from '../../homework/index.ts';
import type { Asking } from '../people/gate.ts';
import { soon } from '../turns.ts';
import type { PaperToState } from '../work/jobs.ts';
import { tutorsSet } from './access.ts';
import { countingIn } from './counting.ts';
import { type Desk, fileFor, workFor } from './desk.ts';
import { learnersOf } from './learners.ts';
import { samplePaperOf } from './sample.ts';
import { settledHeads } from './settle.ts';

/** Milliseconds for which a file waits for papers to be marked: it has to be whole, so for as long as a class takes. */
const MARKING = 60_000;

/** The marks of a set as a table, piece by piece: everybody in the class, with the attempt that counts. */
async function marksFile(desk: Desk, asking: Asking, id: string): Promise<Readable> {
  const kept = await tutorsSet(desk, asking, id);
  const { homework } = desk.store;
  const people = await learnersOf(desk, kept.class);
  const { heads } = await settledHeads(desk, [kept], soon(MARKING));
  const counting = countingIn(kept.set, heads);
  async function* rows(): AsyncGenerator<MarksRow> {
    for (const person of people) {
      const head = counting.get(person.id)?.head;
      const mark = head ? await homework.markOf(head.id) : null;
      yield { learner: person.id, name: person.name, mark };
    }
  }
  return fileFor(desk, asking.id, 'tableMarks', { set: kept.set }, rows());
}

/** A UUID that follows from bytes (RFC 9562, version 8: its own rule). */
function uuidOf(bytes: Uint8Array): string {
  const hex = Buffer.from(bytes.subarray(0, 16));
  hex[6] = (hex[6]! & 0x0f) | 0x80;
  hex[8] = (hex[8]! & 0x3f) | 0x80;
  return hex.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

/**
 * The marked papers of a set as xAPI statements, every attempt, piece by piece. Learners go by pseudonyms that only this
 * installation can make; statements keep their ids, so that sending them twice counts once.
 *
 * @param base - where the installation is found: `https://drawings.example`
 */
async function statementsFile(desk: Desk, asking: Asking, id: string, base: string): Promise<Readable> {
  const kept = await tutorsSet(desk, asking, id);
  const { homework, people } = desk.store;
  const { heads } = await settledHeads(desk, [kept], soon(MARKING));
  const keyed = await people.installation.keyer();
  async function* papers(): AsyncGenerator<PaperToState> {
    for (const { id: paper, learner, submittedAt } of heads) {
      const mark = await homework.markOf(paper);
      if (!mark) continue;
      const uuids = new Map(
        [...mark.items.keys(), 'paper' as const].map((what) => [
          what,
          uuidOf(keyed('statement', `${paper}|${what}`)),
        ]),
      );
      const name = keyed('account', learner).toString('hex').slice(0, 32);
      yield { mark, account: { homePage: base, name }, at: submittedAt ?? kept.set.closesAt, uuids };
    }
  }
  return fileFor(
    desk,
    asking.id,
    'stateMarks',
    { language: desk.words.speech.language, set: kept.set, base },
    papers(),
  );
}

/** The sample paper as a package for another system, with the right answers. */
async function packageOf(desk: Desk, asking: Asking, id: string, version: QtiVersion): Promise<Uint8Array> {
  const kept = await tutorsSet(desk, asking, id);
  const { items } = await samplePaperOf(desk, kept, 1);
  return workFor(desk, asking.id, 'packQti', {
    language: desk.words.speech.language,
    version,
    id: `set-${id}`,
    title: kept.set.title,
    items,
  });
}

/**
 * What a set of homework is exported as, by its route. `base` tells where the installation is found, for what names activities
 * and accounts by that.
 */
type Export = (desk: Desk, asking: Asking, set: string, base: () => string) => Promise<Readable | Uint8Array>;

/** Every export, a line each. */
export const EXPORTS = {
  marksCsv: marksFile,
  statements: (desk, asking, set, base) => statementsFile(desk, asking, set, base()),
  package30: (desk, asking, set) => packageOf(desk, asking, set, '3.0'),
  package22: (desk, asking, set) => packageOf(desk, asking, set, '2.2'),
} satisfies Readonly<Record<string, Export>>;

export type ExportName = keyof typeof EXPORTS;
export const EXPORT_NAMES = Object.keys(EXPORTS) as ExportName[];
