import type { Paper } from '../../../shared/homework.ts';
import type { SamplePaper } from '../../../shared/homework-views.ts';
import { paperInSteps } from '../../homework/index.ts';
import { blankAnswer, markAnswer, publicQuestion } from '../../questions/index.ts';
import type { KeptSet } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { tutorsSet } from './access.ts';
import type { Desk } from './desk.ts';
import { badSet } from './sets.ts';
import { inTurns } from './turns.ts';

/** A paper that nobody gets; the same number gives the same one. */
export async function samplePaperOf(desk: Desk, { set }: KeptSet, number: number): Promise<Paper> {
  const seed = await desk.store.people.installation.keyed('sample', `${set.id}|${number}`);
  const seat = { learner: 'sample', attempt: 1, seed: seed.toString('hex') };
  const made = await inTurns(paperInSteps(set, seat));
  if (!made.ok) throw badSet(made.problems);
  return made.value;
}

export async function sampleOf(desk: Desk, asking: Asking, id: string, number: number): Promise<SamplePaper> {
  const kept = await tutorsSet(desk, asking, id);
  const { items } = await samplePaperOf(desk, kept, number);
  const told: SamplePaper['items'] = [];
  function* each(): Generator<undefined, SamplePaper['items']> {
    for (const [index, item] of items.entries()) {
      const { question } = item;
      const mark = markAnswer(question, blankAnswer(question));
      told.push({ place: index + 1, item, question: publicQuestion(question), mark });
      yield undefined;
    }
    return told;
  }
  return { title: kept.set.title, items: await inTurns(each()) };
}
