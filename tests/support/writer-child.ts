/** A program that keeps answers, one after another and several at once, and says when it has done. */
import { openStore, type StorePlace } from '../../src/store/index.ts';
import { answerWith, MORNING } from './answers.ts';

export interface WriterJob {
  readonly place: StorePlace;
  readonly ids: readonly string[];
  readonly learners: readonly string[];
  /** Answers in one batch. */
  readonly batch: number;
}

process.on('message', async (job: WriterJob) => {
  const store = await openStore(job.place);
  for (let from = 0; from < job.ids.length; from += job.batch) {
    const records = job.ids
      .slice(from, from + job.batch)
      .flatMap((id, at) =>
        job.learners.map((learner) => answerWith({ id, learner, at: MORNING + (from + at) * 60_000 })),
      );
    await store.keepAnswers(records);
  }
  await store.close();
  process.send?.('done', () => process.disconnect());
});
process.send?.('ready');
