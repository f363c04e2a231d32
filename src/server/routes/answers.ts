import type { FastifyInstance } from 'fastify';
import { type AnswerResult, answerBatchEnvelope, apiRoutes, type KeptAnswer } from '../../../shared/api.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { AnswerEntry, Found } from '../../store/index.ts';
import { addRoute } from '../add-route.ts';
import { type CheckedAnswer, checkAnswer } from '../check-answer.ts';
import { lookAgain } from '../look-again.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';
import { type Size, sizeOf } from '../size-of.ts';

/** A full batch of large answers. */
const BATCH_BYTES = 4 * 1024 * 1024;
const MOST_IN_BATCH: Size = { values: 400_000, letters: BATCH_BYTES };
/** Milliseconds for which one request keeps the others waiting. */
const LONGEST_TURN = 10;

/**
 * Checks all of them; requests of others get their turn in between.
 *
 * @param looks - whether they are marked again here
 */
async function checkAll(
  answers: readonly unknown[],
  learner: string,
  looks: boolean,
): Promise<{ readonly checked: readonly CheckedAnswer[]; readonly found: ReadonlyMap<AnswerRecord, Found> }> {
  if (!sizeOf(answers, MOST_IN_BATCH))
    throw new ApiFailure(
      'body-too-large',
      `The answers have more than ${MOST_IN_BATCH.values} values together.`,
      'Send fewer at a time.',
    );
  const checked: CheckedAnswer[] = [];
  const found = new Map<AnswerRecord, Found>();
  let turn = performance.now();
  for (const answer of answers) {
    const one = checkAnswer(answer, learner);
    checked.push(one);
    const other = one.ok && looks ? lookAgain(one.record) : null;
    if (one.ok && other) found.set(one.record, other);
    if (performance.now() - turn < LONGEST_TURN) continue;
    await new Promise<void>((go) => setImmediate(go));
    turn = performance.now();
  }
  return { checked, found };
}

async function resultsOf(
  answers: readonly unknown[],
  learner: string,
  { intake, mode }: Service,
): Promise<readonly AnswerResult[]> {
  const { checked, found } = await checkAll(answers, learner, mode === 'class');
  const records = checked.flatMap((answer) => (answer.ok ? [answer.record] : []));
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
