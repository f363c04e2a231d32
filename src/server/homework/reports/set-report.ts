import type { SetReport } from '../../../../shared/homework-views.ts';
import { type ClassIdea, classReport, phaseOf, tellClassReport } from '../../../homework/index.ts';
import type { Asking } from '../../people/gate.ts';
import { tutorsSet } from '../access.ts';
import { type Counting, countingIn } from '../counting.ts';
import { type Desk, workFor } from '../desk.ts';
import { learnersOf } from '../learners.ts';
import { settledHeads } from '../settle.ts';
import { isHandedIn, stateOf } from '../views.ts';
import { reportBy } from './settled.ts';

type ToldExample = SetReport['report']['ideas'][number]['example'];

/** The smallest drawing on which an idea showed, by what the short marks say of it. */
async function exampleOf(
  desk: Desk,
  { shownIn }: ClassIdea,
  counting: ReadonlyMap<string, Counting>,
): Promise<ToldExample> {
  const { store, words } = desk;
  let best: { id: string; item: number; hops: number } | undefined;
  for (const { learner, item } of shownIn) {
    const head = counting.get(learner)?.head;
    const hops = head?.short?.[item]?.[3];
    if (head && hops !== undefined && (!best || hops < best.hops)) best = { id: head.id, item, hops };
  }
  if (!best) return null;
  const item = (await store.homework.paper(best.id))?.paper.items[best.item];
  const marked = (await store.homework.markOf(best.id))?.items[best.item];
  if (!item || !marked) return null;
  const [mark] = await workFor(desk, best.id, 'tellMarks', {
    language: words.speech.language,
    marks: [{ question: item.question, mark: marked.mark }],
  });
  return { item, mark: mark! };
}

/** What a set says of its class. */
export async function setReport(desk: Desk, asking: Asking, id: string): Promise<SetReport> {
  const kept = await tutorsSet(desk, asking, id);
  const { set } = kept;
  const people = await learnersOf(desk, kept.class);
  const { heads, waiting } = await settledHeads(desk, [kept], reportBy());
  const counting = countingIn(set, heads);
  const at = desk.now();
  const report = classReport({
    set,
    course: desk.course,
    learners: people.map(({ id }) => id),
    marks: [...counting.values()].map(({ mark }) => mark),
    waiting: heads.flatMap((head) =>
      head.short === null && isHandedIn(set, head, at) ? [head.learner] : [],
    ),
    closed: phaseOf(set, at) === 'closed',
  });
  const told = tellClassReport(desk.words, report);
  for (const [index, idea] of report.ideas.entries())
    told.ideas[index]!.example = await exampleOf(desk, idea, counting);
  return { set, state: stateOf(kept, desk.now()), people, waiting, report: told };
}
