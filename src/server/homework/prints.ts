/** Homework on paper: the papers of a class, their key, and evidence of what somebody has proven. */
import {
  answerKeyPdf,
  classPapersPdf,
  evidencePdf,
  type PrintedPaper,
  standingsOf,
} from '../../homework/print/index.ts';
import type { KeptSet } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { inCareOf } from '../people/may.ts';
import { ApiFailure, noSuchThing } from '../problems.ts';
import { checkIssued, tutorsSet } from './access.ts';
import type { Desk } from './desk.ts';
import { withoutPaper } from './make-papers.ts';
import { learnersOf, matrixOf } from './reports.ts';

/** Told after each paper, and waited for. */
export type OnPaper = (done: number, of: number) => void | Promise<void>;

/** Lets others have their turn after each paper. */
const inBetween: OnPaper = () => new Promise<void>((go) => setImmediate(go));

/**
 * A moment or a day in words, as it is in a time zone (`Europe/Berlin`).
 *
 * @throws ApiFailure when there is no such zone
 */
function wordsFor(zone: string): { moment(at: number): string; day(at: number): string } {
  try {
    const dated = { day: 'numeric', month: 'long', year: 'numeric', timeZone: zone } as const;
    const day = new Intl.DateTimeFormat('en-GB', dated);
    const timed = { ...dated, hour: '2-digit', minute: '2-digit', timeZoneName: 'short' } as const;
    const moment = new Intl.DateTimeFormat('en-GB', timed);
    return { moment: (at) => moment.format(at), day: (at) => day.format(at) };
  } catch {
    throw new ApiFailure('bad-value', `There is no time zone ${zone}.`, 'For example Europe/Berlin, or UTC.');
  }
}

/** The first attempt's paper of everybody in the class. */
async function papersToPrint(desk: Desk, kept: KeptSet): Promise<readonly PrintedPaper[]> {
  const { homework } = desk.store;
  checkIssued(kept);
  const { missing, of } = await withoutPaper(desk, kept);
  if (missing.length > 0 || of === 0)
    throw new ApiFailure(
      'not-prepared',
      of === 0 ? 'The class has no learners.' : `${missing.length} of ${of} papers have not been made yet.`,
      of === 0 ? 'Add learners first.' : 'Have the papers made first.',
    );
  const heads = await homework.papersIn([kept.set.id]);
  const ids = new Map(heads.flatMap(({ learner, attempt, id }) => (attempt === 1 ? [[learner, id]] : [])));
  const printed: PrintedPaper[] = [];
  for (const { id, name } of await learnersOf(desk, kept.class)) {
    const paper = await homework.paper(ids.get(id) ?? '');
    if (paper) printed.push({ name, code: paper.code, paper: paper.paper });
  }
  return printed;
}

async function classTitleOf({ store }: Desk, kept: KeptSet): Promise<string> {
  const found = await store.people.classes.get(kept.class);
  if (!found) throw noSuchThing();
  return found.title;
}

/** @param zone - in which the closing time is told */
export async function papersFile(
  desk: Desk,
  asking: Asking,
  id: string,
  zone: string,
  onPaper: OnPaper = inBetween,
): Promise<Uint8Array> {
  const kept = await tutorsSet(desk, asking, id);
  const words = wordsFor(zone);
  return classPapersPdf({
    set: kept.set,
    className: await classTitleOf(desk, kept),
    closes: words.moment(kept.set.closesAt),
    papers: await papersToPrint(desk, kept),
    made: new Date(desk.now()),
    onPaper,
  });
}

export async function keyFile(
  desk: Desk,
  asking: Asking,
  id: string,
  onPaper: OnPaper = inBetween,
): Promise<Uint8Array> {
  const kept = await tutorsSet(desk, asking, id);
  return answerKeyPdf({
    set: kept.set,
    className: await classTitleOf(desk, kept),
    papers: await papersToPrint(desk, kept),
    made: new Date(desk.now()),
    onPaper,
  });
}

/** @param zone - in which days are told */
export async function evidenceFile(
  desk: Desk,
  asking: Asking,
  id: string,
  zone: string,
): Promise<Uint8Array> {
  const person = await inCareOf(desk.store, asking, id);
  const words = wordsFor(zone);
  const matrix = await matrixOf(desk, [id]);
  const { at } = matrix;
  return evidencePdf({
    person: { name: person.name },
    madeAt: words.day(at),
    made: new Date(at),
    day: words.day,
    skills: standingsOf(matrix, id),
    answers: await desk.store.answersOf(id),
  });
}
