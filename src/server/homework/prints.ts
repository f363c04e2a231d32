/** Homework on paper: the papers of a class, their key, and evidence of what somebody has proven. */
import type { Readable } from 'node:stream';
import type { ProofsWanted } from '../../../shared/issued.ts';
import { type PrintedPaper, standingsOf } from '../../homework/print/index.ts';
import type { KeptSet } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { inCareOf } from '../people/may.ts';
import { ApiFailure, noSuchThing } from '../problems.ts';
import { checkIssued, tutorsSet } from './access.ts';
import { checkZone } from './dates.ts';
import { type Desk, fileFor, workFor } from './desk.ts';
import { learnersOf } from './learners.ts';
import { withoutPaper } from './make-papers.ts';
import { matrixOf } from './reports/competence.ts';

/** Told after each paper, and waited for. */
export type OnPaper = (done: number, of: number) => void | Promise<void>;

interface ToPrint {
  readonly of: number;
  readonly papers: AsyncIterable<PrintedPaper>;
}

/** The first attempt's paper of everybody in the class, read one by one. */
async function papersToPrint(desk: Desk, kept: KeptSet, onPaper?: OnPaper): Promise<ToPrint> {
  const { homework } = desk.store;
  checkIssued(kept);
  const { missing, of } = await withoutPaper(desk, kept);
  if (of === 0) throw new ApiFailure({ says: 'not-prepared.nobody' });
  if (missing.length > 0) throw new ApiFailure({ says: 'not-prepared', missing: missing.length, of });
  const heads = await homework.papersIn([kept.set.id]);
  const ids = new Map(heads.flatMap(({ learner, attempt, id }) => (attempt === 1 ? [[learner, id]] : [])));
  const people = await learnersOf(desk, kept.class);
  async function* papers(): AsyncGenerator<PrintedPaper> {
    for (const [done, { id, name }] of people.entries()) {
      // Asked for when the one before is drawn.
      if (done > 0) await onPaper?.(done, people.length);
      const paper = await homework.paper(ids.get(id) ?? '');
      if (paper) yield { name, code: paper.code, paper: paper.paper };
    }
    await onPaper?.(people.length, people.length);
  }
  return { of: people.length, papers: papers() };
}

async function classTitleOf({ store }: Desk, kept: KeptSet): Promise<string> {
  const found = await store.people.classes.get(kept.class);
  if (!found) throw noSuchThing();
  return found.title;
}

/**
 * Gives the file piece by piece.
 *
 * @param zone - in which the closing time is told
 */
export async function papersFile(
  desk: Desk,
  asking: Asking,
  id: string,
  zone: string,
  onPaper?: OnPaper,
): Promise<Readable> {
  const kept = await tutorsSet(desk, asking, id);
  checkZone(zone);
  const closes = desk.words.server.dates.moment({ at: kept.set.closesAt, zone });
  const { papers } = await papersToPrint(desk, kept, onPaper);
  const className = await classTitleOf(desk, kept);
  const { language } = desk.words.speech;
  const request = { language, set: kept.set, className, closes, made: new Date(desk.now()) };
  return fileFor(desk, asking.id, 'printPapers', request, papers);
}

/** Gives the file piece by piece. */
export async function keyFile(desk: Desk, asking: Asking, id: string, onPaper?: OnPaper): Promise<Readable> {
  const kept = await tutorsSet(desk, asking, id);
  const { papers } = await papersToPrint(desk, kept, onPaper);
  const className = await classTitleOf(desk, kept);
  return fileFor(
    desk,
    asking.id,
    'printKey',
    { language: desk.words.speech.language, set: kept.set, className, made: new Date(desk.now()) },
    papers,
  );
}

/** `zone`: in which days are told. */
export async function evidenceFile(
  desk: Desk,
  asking: Asking,
  id: string,
  { zone, proofs }: { readonly zone: string; readonly proofs: ProofsWanted },
): Promise<Uint8Array> {
  const person = await inCareOf(desk.store, asking, id);
  checkZone(zone);
  const matrix = await matrixOf(desk, [id], proofs);
  const skills = standingsOf(desk.course, matrix, id);
  const circuits = skills.flatMap(({ competence }) =>
    competence.kind === 'not-yet' ? [] : competence.provenOn,
  );
  const answers = await desk.store.provingAnswersOf(id, circuits);
  return workFor(desk, asking.id, 'printEvidence', {
    language: desk.words.speech.language,
    person: { name: person.name },
    made: new Date(matrix.at),
    zone,
    skills,
    wanted: proofs,
    answers: answers.filter(({ source }) => proofs === 'any' || source === proofs),
  });
}
