/** Who may do what with homework. What isn't somebody's to see looks as if it weren't there. */
import type { KeptPaper, KeptSet, PaperHead } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { checkTeaches } from '../people/may.ts';
import { ApiFailure, noSuchThing } from '../problems.ts';
import type { Desk } from './desk.ts';

export const isWithdrawn = (): ApiFailure => new ApiFailure({ says: 'withdrawn' });

/** Lets an administrator and the tutors of a class through. */
export async function checkTutor({ store }: Desk, asking: Asking, classId: string): Promise<void> {
  await checkTeaches(store, asking, classId);
  if (asking.role === 'admin' && !(await store.people.classes.get(classId))) throw noSuchThing();
}

/** A set for its tutor. */
export async function tutorsSet(desk: Desk, asking: Asking, id: string): Promise<KeptSet> {
  const kept = await desk.store.homework.set(id);
  if (!kept) throw noSuchThing();
  await checkTutor(desk, asking, kept.class);
  return kept;
}

/** A paper for the tutor of its set. */
export async function tutorsPaper(
  desk: Desk,
  asking: Asking,
  id: string,
): Promise<{ readonly kept: KeptSet; readonly paper: PaperHead }> {
  const paper = await desk.store.homework.head(id);
  if (!paper) throw noSuchThing();
  return { kept: await tutorsSet(desk, asking, paper.set), paper };
}

export function checkIssued({ issuedAt, withdrawnAt }: KeptSet): void {
  if (issuedAt !== null && withdrawnAt === null) return;
  throw new ApiFailure({ says: 'not-issued' });
}

/** A set for a learner of its class; not as long as it is a draft. */
export async function learnersSet(desk: Desk, asking: Asking, id: string): Promise<KeptSet> {
  const kept = await desk.store.homework.set(id);
  if (!kept || kept.issuedAt === null) throw noSuchThing();
  if ((await desk.store.people.classes.mannerOf(kept.class, asking.id)) !== 'learner') throw noSuchThing();
  if (kept.withdrawnAt !== null) throw isWithdrawn();
  return kept;
}

/** Somebody's own paper, from when it was begun; one that was only made is nobody's to see. */
export async function ownPaper(
  desk: Desk,
  asking: Asking,
  id: string,
): Promise<{ readonly kept: KeptSet; readonly paper: PaperHead }> {
  const paper = await desk.store.homework.head(id);
  if (!paper || paper.learner !== asking.id || paper.begunAt === null) throw noSuchThing();
  const kept = await desk.store.homework.set(paper.set);
  if (!kept) throw noSuchThing();
  if (kept.withdrawnAt !== null) throw isWithdrawn();
  return { kept, paper };
}

/** The same for one who may still work on it: who was taken out of the class looks at what was marked, and no more. */
export async function workingPaper(
  desk: Desk,
  asking: Asking,
  id: string,
): Promise<{ readonly kept: KeptSet; readonly paper: PaperHead }> {
  const own = await ownPaper(desk, asking, id);
  if ((await desk.store.people.classes.mannerOf(own.kept.class, asking.id)) === 'learner') return own;
  throw new ApiFailure({ says: 'no-such-thing.leftClass' });
}

/** A paper with what is on it. */
export async function wholePaper({ store }: Desk, { id }: PaperHead): Promise<KeptPaper> {
  const paper = await store.homework.paper(id);
  if (!paper) throw noSuchThing();
  return paper;
}
