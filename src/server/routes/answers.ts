import type { FastifyInstance } from 'fastify';
import { type AnswerResult, answerBatchEnvelope, apiRoutes, type KeptAnswer } from '../../../shared/api.ts';
import type { AnswerEntry } from '../../store/index.ts';
import { addRoute } from '../add-route.ts';
import { checkAnswer } from '../check-answer.ts';
import type { Intake } from '../intake.ts';
import type { Service } from '../service.ts';

/** A full batch of long answers. */
const BATCH_BYTES = 8 * 1024 * 1024;

async function resultsOf(
  answers: readonly unknown[],
  learner: string,
  intake: Intake,
): Promise<readonly AnswerResult[]> {
  const checked = answers.map((answer) => checkAnswer(answer, learner));
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

export function addAnswers(app: FastifyInstance, { store, intake, learnerOf }: Service): void {
  addRoute(
    app,
    apiRoutes.keepAnswers,
    async ({ body, request }) => ({ results: await resultsOf(body.answers, learnerOf(request), intake) }),
    { bodyLimit: BATCH_BYTES, body: answerBatchEnvelope },
  );
  addRoute(app, apiRoutes.answers, async ({ query, request }) => {
    const page = await store.entriesAfter(learnerOf(request), query.after, query.limit);
    return { history: page.history, last: page.last, answers: page.entries.map(keptAnswer) };
  });
}
