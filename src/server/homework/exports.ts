/** Homework as files: marks, statements, packages. */
import type { PaperMark } from '../../../shared/homework.ts';
import { marksCsv, type QtiVersion, type XapiStatement, xapiStatements } from '../../homework/index.ts';
import type { Asking } from '../people/gate.ts';
import { others, soon } from '../turns.ts';
import { tutorsSet } from './access.ts';
import { type Desk, workFor } from './desk.ts';
import { countingIn, learnersOf } from './reports.ts';
import { samplePaperOf } from './sample.ts';
import { settledHeads } from './settle.ts';

/** Milliseconds for which a file waits for papers to be marked: it has to be whole, so for as long as a class takes. */
const MARKING = 60_000;

/** The marks of a set as a table: everybody in the class, with the attempt that counts. */
export async function marksFile(desk: Desk, asking: Asking, id: string): Promise<string> {
  const kept = await tutorsSet(desk, asking, id);
  const people = await learnersOf(desk, kept.class);
  const { heads } = await settledHeads(desk, [kept], soon(MARKING));
  const counting = countingIn(kept.set, heads);
  const rows: { learner: string; name: string; mark: PaperMark | null }[] = [];
  for (const person of people) {
    const head = counting.get(person.id)?.head;
    const mark = head ? await desk.store.homework.markOf(head.id) : null;
    rows.push({ learner: person.id, name: person.name, mark });
    await others();
  }
  return marksCsv(kept.set, rows);
}

/** A UUID that follows from bytes (RFC 9562, version 8: its own rule). */
function uuidOf(bytes: Uint8Array): string {
  const hex = Buffer.from(bytes.subarray(0, 16));
  hex[6] = (hex[6]! & 0x0f) | 0x80;
  hex[8] = (hex[8]! & 0x3f) | 0x80;
  return hex.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

/**
 * The marked papers of a set as xAPI statements, every attempt. Learners go by pseudonyms that only this installation can
 * make; statements keep their ids, so that sending them twice counts once.
 *
 * @param base - where the installation is found: `https://drawings.example`
 */
export async function statementsOf(
  desk: Desk,
  asking: Asking,
  id: string,
  base: string,
): Promise<readonly XapiStatement[]> {
  const kept = await tutorsSet(desk, asking, id);
  const { installation } = desk.store.people;
  const { heads } = await settledHeads(desk, [kept], soon(MARKING));
  const statements: XapiStatement[] = [];
  for (const head of heads) {
    const mark = await desk.store.homework.markOf(head.id);
    if (!mark) continue;
    await others();
    const pseudonym = (await installation.keyed('account', head.learner)).toString('hex').slice(0, 32);
    const uuids = new Map<number | 'paper', string>();
    for (const what of [...mark.items.keys(), 'paper' as const])
      uuids.set(what, uuidOf(await installation.keyed('statement', `${head.id}|${what}`)));
    statements.push(
      ...xapiStatements({
        set: kept.set,
        mark,
        base,
        account: { homePage: base, name: pseudonym },
        at: head.submittedAt ?? kept.set.closesAt,
        uuidFor: (what) => uuids.get(what)!,
      }),
    );
  }
  return statements;
}

/** The sample paper as a package for another system, with the right answers. */
export async function packageOf(
  desk: Desk,
  asking: Asking,
  id: string,
  version: QtiVersion,
): Promise<Uint8Array> {
  const kept = await tutorsSet(desk, asking, id);
  const { items } = await samplePaperOf(desk, kept, 1);
  return workFor(desk, asking.id, 'packQti', { version, id: `set-${id}`, title: kept.set.title, items });
}
