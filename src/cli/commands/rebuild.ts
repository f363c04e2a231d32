import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Mark } from '../../../shared/question.ts';
import { markAnswer } from '../../questions/index.ts';
import type { Store } from '../../store/index.ts';
import { say } from '../../words/statement.ts';
import type { Io } from '../io.ts';
import { progressOf, withStore } from '../store-place.ts';

export interface RebuildOptions {
  readonly data?: string;
  readonly check?: boolean;
  readonly marks?: boolean;
  readonly restored?: boolean;
}

/** The mark that the solver gives today; null for a question that it can't answer any more. */
function markAgain({ question, answer }: AnswerRecord): Mark | null {
  try {
    return markAnswer(question, answer).mark;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

async function check(store: Store, io: Io): Promise<0 | 1> {
  const { kept, rebuild: said, progress } = io.words;
  const faults = await store.check(progressOf(io, progress.lookedThrough));
  for (const { learner, fault } of faults) {
    const told = say(kept.faults, fault);
    io.err(learner === null ? told : said.faultOf({ learner, told }));
  }
  io.out(faults.length === 0 ? said.allWell : said.faultsFound(faults.length));
  return faults.length === 0 ? 0 : 1;
}

async function correctMarks(store: Store, io: Io): Promise<void> {
  const { rebuild: said, progress } = io.words;
  const { marked, changed, left } = await store.correctMarks(markAgain, progressOf(io, progress.marked));
  for (const { learner, number, id } of changed) io.out(said.markedOtherwise({ learner, number, id }));
  io.out(said.markedAgain({ marked, changed: changed.length }));
  if (left > 0) io.out(said.leftAsBefore(left));
}

async function rebuildRecalls(store: Store, io: Io): Promise<void> {
  const learners = await store.learners();
  const progress = progressOf(io, io.words.progress.rebuilt);
  for (const [done, { learner }] of learners.entries()) {
    await store.rebuildRecalls(learner);
    progress(done + 1, learners.length);
  }
  const answers = learners.reduce((sum, { answers }) => sum + answers, 0);
  io.out(io.words.rebuild.rebuilt({ answers, learners: learners.length }));
}

/** Works out anew what follows from the answers, or looks whether all is well; gives the exit code. */
export const rebuild = (options: RebuildOptions, io: Io): Promise<0 | 1> =>
  withStore(io, options.data, async (store) => {
    if (options.check) return check(store, io);
    if (options.restored) await store.renameHistories();
    if (options.marks) await correctMarks(store, io);
    await rebuildRecalls(store, io);
    return 0;
  });
