import type { FastifyInstance } from 'fastify';
import { type AnswerResult, answerBatchEnvelope, apiRoutes, type KeptAnswer } from '../../../shared/api.ts';
import type { AnswerEntry } from '../../store/index.ts';
import { addRoute } from '../add-route.ts';
import { type CheckedAnswer, checkAnswer } from '../check-answer.ts';
import type { Intake } from '../intake.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';
import { type Size, sizeOf } from '../size-of.ts';

/** A full batch of large answers. */
const BATCH_BYTES = 4 * 1024 * 1024;
const MOST_IN_BATCH: Size = { values: 400_000, letters: BATCH_BYTES };
/** Milliseconds for which one request keeps the others waiting. */
const LONGEST_TURN = 10;

/** Looks at all of them; requests of others get their turn in between. */
async function checkAll(answers: readonly unknown[], learner: string): Promise<readonly CheckedAnswer[]> {
  if (!sizeOf(answers, MOST_IN_BATCH))
    throw new ApiFailure(
      'body-too-large',
      `The answers have more than ${MOST_IN_BATCH.values} values together.`,
      'Send fewer at a time.',
    );
  const checked: CheckedAnswer[] = [];
  let turn = performance.now();
  for (const answer of answers) {
    checked.push(checkAnswer(answer, learner));
    if (performance.now() - turn < LONGEST_TURN) continue;
    await new Promise<void>((go) => setImmediate(go));
    turn = performance.now();
  }
  return checked;
}

async function resultsOf(
  answers: readonly unknown[],
  learner: string,
  intake: Intake,
): Promise<readonly AnswerResult[]> {
  const checked = await checkAll(answers, learner);
  const records = checked.flatMap((answer) => (answer.ok ? [answer.record] : []));
  const kept = records.length > 0 ? await intake.keep(records) : [];
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
  const { store, intake } = service;
  addRoute(
    app,
    service,
    apiRoutes.keepAnswers,
    async ({ body, person }) => ({ results: await resultsOf(body.answers, person.id, intake) }),
    { bodyLimit: BATCH_BYTES, body: answerBatchEnvelope },
  );
  addRoute(app, service, apiRoutes.answers, async ({ query, person }) => {
    const page = await store.entriesAfter(person.id, query.after, query.limit);
    return { history: page.history, last: page.last, answers: page.entries.map(keptAnswer) };
  });
}
