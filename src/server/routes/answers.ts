import type { FastifyInstance } from 'fastify';
import { type AnswerResult, answerBatchEnvelope, apiRoutes, type KeptAnswer } from '../../../shared/api.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { AnswerEntry, Found } from '../../store/index.ts';
import { addRoute } from '../add-route.ts';
import { type CheckedAnswer, checkAnswer } from '../check-answer.ts';
import { worthless } from '../look-again.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';
import { type Size, sizeOf } from '../size-of.ts';
import { inTurns } from '../turns.ts';
import { JobEnded, type Work } from '../work/work.ts';

/** A full batch of large answers. */
const BATCH_BYTES = 4 * 1024 * 1024;
const MOST_IN_BATCH: Size = { values: 400_000, letters: BATCH_BYTES };

/** Looks at the form of all of them; requests of others get their turn in between. */
async function checkAll(answers: readonly unknown[], learner: string): Promise<readonly CheckedAnswer[]> {
  if (!sizeOf(answers, MOST_IN_BATCH))
    throw new ApiFailure(
      'body-too-large',
      `The answers have more than ${MOST_IN_BATCH.values} values together.`,
      'Send fewer at a time.',
    );
  function* each(): Generator<undefined, readonly CheckedAnswer[]> {
    const checked: CheckedAnswer[] = [];
    for (const answer of answers) {
      checked.push(checkAnswer(answer, learner));
      yield undefined;
    }
    return checked;
  }
  return inTurns(each());
}

/** What is found of one answer where it is marked again; null where that is what it says of itself. */
async function lookAgainAt(record: AnswerRecord, work: Work, signal: AbortSignal): Promise<Found | null> {
  try {
    return await work.run('lookAgain', record, { owner: record.learner, signal });
  } catch (error) {
    // Nothing that is asked takes so long. Whatever is wrong with it, the answers beside it have to be kept.
    if (error instanceof JobEnded && (error.why === 'too-long' || error.why === 'too-large'))
      return worthless(record);
    throw error;
  }
}

/** Marks answers again, apart from the thread that answers requests. */
async function lookAgainAtAll(
  records: readonly AnswerRecord[],
  work: Work,
): Promise<ReadonlyMap<AnswerRecord, Found>> {
  const gone = new AbortController();
  try {
    const found = await Promise.all(records.map((record) => lookAgainAt(record, work, gone.signal)));
    return new Map(records.flatMap((record, at) => (found[at] ? [[record, found[at]]] : [])));
  } finally {
    // Where one of them fails, none is kept, and nobody waits for the others.
    gone.abort();
  }
}

async function resultsOf(
  answers: readonly unknown[],
  learner: string,
  { intake, mode, work }: Service,
): Promise<readonly AnswerResult[]> {
  const checked = await checkAll(answers, learner);
  const records = checked.flatMap((answer) => (answer.ok ? [answer.record] : []));
  // Where others rely on what somebody can do, the word of that person's device is not enough.
  const found = mode === 'class' ? await lookAgainAtAll(records, work) : new Map();
  const kept = records.length > 0 ? await intake.keep(records, found) : [];
  let next = 0;
  return checked.map((answer): AnswerResult => {
    if (!answer.ok) return answer.refused;
    const { kept: isNew, number } = kept[next++]!;
    return { result: isNew ? 'kept' : 'already', id: answer.record.id, number };
  });
}

function keptAnswer(entry: AnswerEntry): KeptAnswer {
  const { number, arrivedAt } = entry;
  return entry.kind === 'answer'
    ? { kind: 'answer', number, arrivedAt, answer: entry.record, correctedMark: entry.correctedMark }
    : { kind: 'unreadable', number, arrivedAt, id: entry.id, message: entry.message };
}

export function addAnswers(app: FastifyInstance, service: Service): void {
  const { store } = service;
  addRoute(
    app,
    service,
    apiRoutes.keepAnswers,
    async ({ body, person }) => ({ results: await resultsOf(body.answers, person.id, service) }),
    { bodyLimit: BATCH_BYTES, body: answerBatchEnvelope },
  );
  addRoute(app, service, apiRoutes.answers, async ({ query, person }) => {
    const page = await store.entriesAfter(person.id, query.after, query.limit);
    return { history: page.history, last: page.last, answers: page.entries.map(keptAnswer) };
  });
}
