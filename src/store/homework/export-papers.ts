import type { Kysely } from 'kysely';
import { mayReview, publicPaper } from '../../homework/index.ts';
import type { Words } from '../../words/index.ts';
import type { Tables } from '../schema.ts';
import { markOf } from './marks.ts';
import { paperById, papersOf } from './papers.ts';
import { answersOf, hintsOf } from './saves.ts';
import { setById } from './sets.ts';

/**
 * The papers that a learner has begun, with what was saved. Marks and what explains them only where the learner may look
 * through the paper at that moment: an export must not be a way round.
 */
export async function* exportedPapers(
  db: Kysely<Tables>,
  learner: string,
  words: Words,
  now: number,
): AsyncGenerator<object> {
  for (const { id, begunAt, submittedAt } of await papersOf(db, learner)) {
    const kept = await paperById(db, id);
    const set = kept && (await setById(db, kept.set))?.set;
    if (!kept || !set || begunAt === null) continue;
    yield {
      paper: publicPaper(words, set, kept.paper),
      begunAt,
      submittedAt,
      answers: await answersOf(db, id),
      hints: await hintsOf(db, id),
      mark: mayReview(set, now, submittedAt !== null) ? await markOf(db, id) : null,
    };
  }
}
