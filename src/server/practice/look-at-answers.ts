/** What becomes of the answers of practice where people sign in: the word of the learner's device is not enough. */
import { setMaxListeners } from 'node:events';
import type { IssuedQuestion } from '../../../shared/issued.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import { issuedIn } from '../../practice/index.ts';
import type { Found, Proof } from '../../store/index.ts';
import type { GuardedPaper } from '../homework/guard.ts';
import { type IssueToLookAt, type Look, worthless } from '../look-again.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';
import { JobEnded, type Work } from '../work/work.ts';

/** How wrong a device's clock may be, in milliseconds, for an answer to prove something. */
const CLOCK = 86_400_000;

interface Looking {
  readonly guarded: ReadonlySet<string>;
  readonly issueOf: (record: AnswerRecord) => IssueToLookAt | null;
  readonly work: Work;
}

/** What is found of one answer where it is marked again. */
async function lookAt(record: AnswerRecord, looking: Looking, signal: AbortSignal): Promise<Look> {
  const { guarded, issueOf, work } = looking;
  try {
    const input = { record, guarded, issued: issueOf(record) };
    return await work.run('lookAgain', input, { owner: record.learner, signal });
  } catch (error) {
    // Nothing that is asked takes so long. Whatever is wrong with it, the answers beside it have to be kept.
    if (error instanceof JobEnded && (error.why === 'too-long' || error.why === 'too-large'))
      return { found: worthless(record), onOpenPaper: null, passedOver: null };
    throw error;
  }
}

/** Marks answers again, apart from the thread that answers requests. */
async function lookAtAll(records: readonly AnswerRecord[], looking: Looking): Promise<readonly Look[]> {
  const gone = new AbortController();
  // All of them wait for the one signal.
  setMaxListeners(records.length + 1, gone.signal);
  try {
    return await Promise.all(records.map((record) => lookAt(record, looking, gone.signal)));
  } finally {
    // Where one of them fails, none is kept, and nobody waits for the others.
    gone.abort();
  }
}

/** An answer about a circuit that stands on an open paper of its learner's is not kept, so nothing marks it. */
async function onOpenPaper(
  circuit: string,
  open: readonly GuardedPaper[],
  { guard }: Service,
): Promise<ApiFailure> {
  const paper = open.find(({ circuits }) => circuits.has(circuit));
  if (paper) await guard.tried({ paper, circuit }, 'practice');
  return new ApiFailure({ says: 'on-open-paper', title: paper?.kept.set.title ?? '' });
}

/** Answers of homework have ids of this form, which a device never makes: none may stand in one's place. */
const HOMEWORK_ID = /^[A-Za-z0-9]{21}-\d{1,2}$/;

/** When an answer to an issued question counts as given; null where its own moment can't be true. */
function countsAt({ at }: AnswerRecord, { issuedAt }: IssuedQuestion, now: number): number | null {
  if (at < issuedAt - CLOCK || at > now + CLOCK) return null;
  return Math.min(Math.max(at, issuedAt), now);
}

/** Issued questions that these answers say they are to, by answer. */
async function issuesOf(
  records: readonly AnswerRecord[],
  learner: string,
  { store }: Service,
): Promise<ReadonlyMap<AnswerRecord, IssuedQuestion>> {
  const said = records.flatMap((record) => {
    const issued = issuedIn(record.question);
    return issued ? [[record, issued.id] as const] : [];
  });
  const known = await store.issued.find(
    learner,
    said.map(([, id]) => id),
  );
  return new Map(
    said.flatMap(([record, id]) => {
      const issue = known.get(id);
      return issue?.skill === record.skill ? [[record, issue]] : [];
    }),
  );
}

export interface LookedAt {
  /** Why some aren't kept. */
  readonly refused: ReadonlyMap<AnswerRecord, ApiFailure>;
  readonly found: ReadonlyMap<AnswerRecord, Found>;
  readonly proofs: ReadonlyMap<AnswerRecord, Proof>;
}

/** Looks at one learner's answers, in the order in which they were given. */
export async function lookAtAnswers(
  records: readonly AnswerRecord[],
  learner: string,
  service: Service,
): Promise<LookedAt> {
  const { course, guard, now, store, work } = service;
  const open = await guard.papersOf(learner);
  const issues = await issuesOf(records, learner, service);
  const looks = await lookAtAll(records, {
    guarded: new Set(open.flatMap(({ circuits }) => [...circuits.keys()])),
    issueOf(record) {
      const issue = issues.get(record);
      const recipes = issue && course.skills.get(issue.skill)?.recipes;
      return recipes ? { issue, recipes } : null;
    },
    work,
  });
  const passes = looks.some(({ passedOver }) => passedOver !== null && passedOver.length > 0);
  const seen = new Set(passes ? await store.circuitsSeenBy(learner) : []);
  for (const { circuits } of open) for (const circuit of circuits.keys()) seen.add(circuit);
  const refused = new Map<AnswerRecord, ApiFailure>();
  const found = new Map<AnswerRecord, Found>();
  const proofs = new Map<AnswerRecord, Proof>();
  for (const [index, record] of records.entries()) {
    const look = looks[index]!;
    if (look.onOpenPaper !== null) {
      refused.set(record, await onOpenPaper(look.onOpenPaper, open, service));
      continue;
    }
    if (HOMEWORK_ID.test(record.id)) {
      refused.set(record, new ApiFailure({ says: 'bad-answer.ofHomework' }));
      continue;
    }
    if (look.found) found.set(record, look.found);
    const issue = issues.get(record);
    const at = issue ? countsAt(record, issue, now()) : null;
    if (issue && at !== null && look.passedOver?.every((circuit) => seen.has(circuit)))
      proofs.set(record, { source: 'issued', at, issued: issue.id });
    seen.add((look.found ?? record).circuit);
  }
  return { refused, found, proofs };
}
