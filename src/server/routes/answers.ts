import type { FastifyInstance } from 'fastify';
import { type AnswerResult, answerBatchEnvelope, apiRoutes, type KeptAnswer } from '../../../shared/api.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { AnswerEntry, Found } from '../../store/index.ts';
import { addRoute } from '../add-route.ts';
import { type CheckedAnswer, checkAnswer } from '../check-answer.ts';
import type { GuardedPaper } from '../homework/guard.ts';
import { type Look, worthless } from '../look-again.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';
import { type Size, sizeOf } from '../size-of.ts';
import { inTurns } from '../turns.ts';
import { JobEnded, type Work } from '../work/work.ts';

/** A full batch of large answers. */
const BATCH_BYTES = 2 * 1024 * 1024;
const MOST_IN_BATCH: Size = { values: 150_000, letters: BATCH_BYTES };

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

/** What is found of one answer where it is marked again. */
async function lookAgainAt(
  record: AnswerRecord,
  guarded: ReadonlySet<string>,
  work: Work,
  signal: AbortSignal,
): Promise<Look> {
  try {
    return await work.run('lookAgain', { record, guarded }, { owner: record.learner, signal });
  } catch (error) {
    // Nothing that is asked takes so long. Whatever is wrong with it, the answers beside it have to be kept.
    if (error instanceof JobEnded && (error.why === 'too-long' || error.why === 'too-large'))
      return { found: worthless(record), onOpenPaper: null };
    throw error;
  }
}

/** Marks answers again, apart from the thread that answers requests. */
async function lookAgainAtAll(
  records: readonly AnswerRecord[],
  guarded: ReadonlySet<string>,
  work: Work,
): Promise<ReadonlyMap<AnswerRecord, Look>> {
  const gone = new AbortController();
  try {
    const looks = await Promise.all(records.map((record) => lookAgainAt(record, guarded, work, gone.signal)));
    return new Map(records.map((record, at) => [record, looks[at]!]));
  } finally {
    // Where one of them fails, none is kept, and nobody waits for the others.
    gone.abort();
  }
}

/** An answer about a circuit that stands on an open paper of its learner's is not kept, so nothing marks it. */
async function onOpenPaper(
  { id }: AnswerRecord,
  circuit: string,
  open: readonly GuardedPaper[],
  { guard }: Service,
): Promise<AnswerResult> {
  const paper = open.find(({ circuits }) => circuits.has(circuit));
  if (paper) await guard.tried({ paper, circuit }, 'practice');
  const title = paper?.kept.set.title ?? '';
  const message = `This circuit is on your paper of “${title}”, which is open.`;
  const hint = 'It is marked there, when the paper has been handed in.';
  return { result: 'refused', id, problem: { code: 'on-open-paper', message, hint } };
}

/** Results for those that aren't kept; and the others, with what is found of them where they are marked again. */
async function sorted(
  records: readonly AnswerRecord[],
  learner: string,
  service: Service,
): Promise<{
  readonly refused: ReadonlyMap<AnswerRecord, AnswerResult>;
  readonly found: ReadonlyMap<AnswerRecord, Found>;
}> {
  const refused = new Map<AnswerRecord, AnswerResult>();
  const found = new Map<AnswerRecord, Found>();
  // Where others rely on what somebody can do, the word of that person's device is not enough.
  if (service.mode !== 'class') return { refused, found };
  const open = await service.guard.papersOf(learner);
  const guarded = new Set(open.flatMap(({ circuits }) => [...circuits.keys()]));
  for (const [record, look] of await lookAgainAtAll(records, guarded, service.work)) {
    if (look.onOpenPaper !== null)
      refused.set(record, await onOpenPaper(record, look.onOpenPaper, open, service));
    else if (look.found) found.set(record, look.found);
  }
  return { refused, found };
}

async function resultsOf(
  answers: readonly unknown[],
  learner: string,
  service: Service,
): Promise<readonly AnswerResult[]> {
  const checked = await checkAll(answers, learner);
  const records = checked.flatMap((answer) => (answer.ok ? [answer.record] : []));
  const { refused, found } = await sorted(records, learner, service);
  const good = records.filter((record) => !refused.has(record));
  const kept = good.length > 0 ? await service.intake.keep(good, found) : [];
  let next = 0;
  return checked.map((answer): AnswerResult => {
    if (!answer.ok) return answer.refused;
    const no = refused.get(answer.record);
    if (no) return no;
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
