import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Mark } from '../../../shared/question.ts';
import { markAnswer } from '../../questions/index.ts';
import type { Store } from '../../store/index.ts';
import { counted } from '../counted.ts';
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
    return markAnswer(question, answer);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

async function check(store: Store, io: Io): Promise<0 | 1> {
  const faults = await store.check(progressOf(io, 'Looked through'));
  for (const { learner, message } of faults) io.err(learner === null ? message : `${learner}: ${message}`);
  io.out(
    faults.length === 0 ? 'Everything is as it should be.' : `${counted(faults.length, 'fault')} found.`,
  );
  return faults.length === 0 ? 0 : 1;
}

async function correctMarks(store: Store, io: Io): Promise<void> {
  const { marked, changed, left } = await store.correctMarks(markAgain, progressOf(io, 'Marked'));
  for (const { learner, number, id } of changed)
    io.out(`${learner}: answer ${number} (${id}) has another mark now; the first one is kept beside it.`);
  io.out(`${counted(marked, 'answer')} marked again, ${changed.length} otherwise than before.`);
  if (left > 0) io.out(`${counted(left, 'answer')} could not be read or marked and stayed as before.`);
}

async function rebuildRecalls(store: Store, io: Io): Promise<void> {
  const learners = await store.learners();
  const progress = progressOf(io, 'Rebuilt');
  for (const [done, { learner }] of learners.entries()) {
    await store.rebuildRecalls(learner);
    progress(done + 1, learners.length);
  }
  const answers = learners.reduce((sum, { answers }) => sum + answers, 0);
  io.out(
    `What is remembered was worked out anew from ${counted(answers, 'answer')} of ${counted(learners.length, 'learner')}.`,
  );
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
