import type { FastifyInstance } from 'fastify';
import { type AnswerResult, answerBatchEnvelope, apiRoutes, type KeptAnswer } from '../../../shared/api.ts';
import type { AnswerEntry } from '../../store/index.ts';
import { say, type Words } from '../../words/index.ts';
import { addRoute } from '../add-route.ts';
import { type CheckedAnswer, checkAnswer } from '../check-answer.ts';
import { type LookedAt, lookAtAnswers } from '../practice/look-at-answers.ts';
import type { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';
import { inTurns } from '../turns.ts';

/** A full batch of large answers. */
const BATCH_BYTES = 2 * 1024 * 1024;

/** Looks at the form of all of them; requests of others get their turn in between. */
async function checkAll(answers: readonly unknown[], learner: string): Promise<readonly CheckedAnswer[]> {
  function* each(): Generator<undefined, readonly CheckedAnswer[]> {
    const checked: CheckedAnswer[] = [];
    for (const answer of answers) checked.push(yield* checkAnswer(answer, learner));
    return checked;
  }
  return inTurns(each());
}

/** On a machine of one's own an answer is what it says of itself. */
const AS_SENT: LookedAt = { refused: new Map(), found: new Map(), proofs: new Map() };

const refusedAs = (id: string | null, failure: ApiFailure, { words }: Service): AnswerResult => ({
  result: 'refused',
  id,
  problem: failure.told(words),
});

async function resultsOf(
  answers: readonly unknown[],
  learner: string,
  service: Service,
): Promise<readonly AnswerResult[]> {
  const checked = await checkAll(answers, learner);
  const records = checked.flatMap((answer) => (answer.ok ? [answer.record] : []));
  const { refused, found, proofs } =
    service.mode === 'class' ? await lookAtAnswers(records, learner, service) : AS_SENT;
  const good = records.filter((record) => !refused.has(record));
  const kept = good.length > 0 ? await service.intake.keep(good, found, proofs) : [];
  let next = 0;
  return checked.map((answer): AnswerResult => {
    if (!answer.ok) return refusedAs(answer.id, answer.failure, service);
    const no = refused.get(answer.record);
    if (no) return refusedAs(answer.record.id, no, service);
    const { kept: isNew, number } = kept[next++]!;
    return { result: isNew ? 'kept' : 'already', id: answer.record.id, number };
  });
}

function keptAnswer(entry: AnswerEntry, { server: { store } }: Words): KeptAnswer {
  const { number, arrivedAt } = entry;
  return entry.kind === 'answer'
    ? { kind: 'answer', number, arrivedAt, answer: entry.record, correctedMark: entry.correctedMark }
    : { kind: 'unreadable', number, arrivedAt, id: entry.id, message: say(store.unreadable, entry.why) };
}

export function addAnswers(app: FastifyInstance, service: Service): void {
  const { words, store } = service;
  addRoute(
    app,
    service,
    apiRoutes.keepAnswers,
    async ({ body, person }) => ({ results: await resultsOf(body.answers, person.id, service) }),
    { bodyLimit: BATCH_BYTES, body: answerBatchEnvelope },
  );
  addRoute(app, service, apiRoutes.answers, async ({ query, person }) => {
    const page = await store.entriesAfter(person.id, query.after, query.limit);
    const answers = page.entries.map((entry) => keptAnswer(entry, words));
    return { history: page.history, last: page.last, answers };
  });
  addRoute(app, service, apiRoutes.lines, ({ query, person }) =>
    store.linesAfter(person.id, query.after, query.limit),
  );
}
