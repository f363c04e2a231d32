import type { Paper } from '../../../shared/homework.ts';
import type { SamplePaper } from '../../../shared/homework-views.ts';
import type { KeptSet } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { tutorsSet } from './access.ts';
import { type Desk, workFor } from './desk.ts';
import { badSet } from './sets.ts';

/** A paper that nobody gets; the same number gives the same one. */
export async function samplePaperOf(desk: Desk, { set }: KeptSet, number: number): Promise<Paper> {
  const seed = await desk.store.people.installation.keyed('sample', `${set.id}|${number}`);
  const seat = { learner: 'sample', attempt: 1, seed: seed.toString('hex') };
  const made = await workFor(desk, set.id, 'makePaper', { set, seat, taken: new Map() });
  if (!made.ok) throw badSet(made.problems);
  return made.value;
}

export async function sampleOf(desk: Desk, asking: Asking, id: string, number: number): Promise<SamplePaper> {
  const kept = await tutorsSet(desk, asking, id);
  const paper = await samplePaperOf(desk, kept, number);
  return {
    title: kept.set.title,
    items: await workFor(desk, id, 'explainPaper', {
      language: desk.words.speech.language,
      items: paper.items,
    }),
  };
}
