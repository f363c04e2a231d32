/**
 * Marks what was handed in, and hands the answers to the learner's memory. It is done when somebody looks, so nothing has
 * to run at closing time; doing it twice, here or on another server, comes to the same.
 */
import type { AnswerRecord } from '../../../shared/practice.ts';
import { countedAnswers, mayRemember, paperStateOf, recordsOf } from '../../homework/index.ts';
import type { KeptSet, PaperHead } from '../../store/index.ts';
import { isPast } from '../turns.ts';
import { type Desk, workFor } from './desk.ts';

/** A paper that may never be looked through must not be found again, explained, among the learner's answers. */
const unexplained = (record: AnswerRecord): AnswerRecord => ({
  ...record,
  mark: { ...record.mark, parts: [], misconceptions: [] },
});

const isToMark = ({ set }: KeptSet, head: PaperHead, at: number): boolean =>
  head.markedAt === null && paperStateOf(set, head, at) === 'handed-in';

const isToRemember = ({ set }: KeptSet, head: PaperHead, at: number): boolean =>
  head.rememberedAt === null && paperStateOf(set, head, at) === 'handed-in' && mayRemember(set, at);

/** Settles one paper, whatever is left to do of it. */
export async function settlePaper(desk: Desk, kept: KeptSet, id: string): Promise<void> {
  const { homework } = desk.store;
  const at = desk.now();
  const paper = await homework.paper(id);
  if (!paper || paperStateOf(kept.set, paper, at) !== 'handed-in') return;
  const marks = isToMark(kept, paper, at);
  const remembers = isToRemember(kept, paper, at);
  if (!marks && !remembers) return;
  const counted = countedAnswers(kept.set, await homework.answersOf(id));
  const mark =
    (await homework.markOf(id)) ??
    (await workFor(desk, paper.learner, 'markPaper', { paper: paper.paper, counted }));
  // Somebody else may have been faster: then the marks are the same.
  if (marks) await homework.mark(paper, mark);
  if (!remembers) return;
  const handedIn = paper.submittedAt ?? kept.set.closesAt;
  const records = recordsOf(paper.paper, mark, counted, handedIn, (item) => `${id}-${item}`);
  const told = kept.set.review === 'never' ? records.map(unexplained) : records;
  const source = kept.set.supervised ? 'supervised' : 'homework';
  const proofs = new Map(told.map((record) => [record, { source, at: record.at } as const]));
  await desk.store.keepAnswers(told, new Map(), proofs, 'person');
  await homework.remembered(id);
}

/** The papers of some sets, settled as far as there is time for it. */
export async function settledHeads(
  desk: Desk,
  sets: readonly KeptSet[],
  until: number,
): Promise<{ readonly heads: readonly PaperHead[]; readonly waiting: number }> {
  const ids = sets.map(({ set }) => set.id);
  const heads = await desk.store.homework.papersIn(ids);
  const bySet = new Map(ids.map((id): [string, PaperHead[]] => [id, []]));
  for (const head of heads) bySet.get(head.set)?.push(head);
  let settled = 0;
  let waiting = 0;
  for (const kept of sets) {
    const done = await settle(desk, kept, bySet.get(kept.set.id) ?? [], until);
    settled += done.settled;
    waiting += done.waiting;
  }
  return { heads: settled > 0 ? await desk.store.homework.papersIn(ids) : heads, waiting };
}

/**
 * Settles those papers of a set that have to be, as long as there is time; gives those that were not marked in it.
 *
 * @param until - as `soon` gives it
 */
export async function settle(
  desk: Desk,
  kept: KeptSet,
  heads: readonly PaperHead[],
  until: number,
): Promise<{ readonly settled: number; readonly waiting: number }> {
  const at = desk.now();
  let settled = 0;
  let waiting = 0;
  for (const head of heads) {
    const marks = isToMark(kept, head, at);
    if (!marks && !isToRemember(kept, head, at)) continue;
    if (isPast(until)) {
      if (marks) waiting++;
      continue;
    }
    await settlePaper(desk, kept, head.id);
    settled++;
  }
  return { settled, waiting };
}
