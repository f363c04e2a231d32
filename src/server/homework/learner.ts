/** What a learner does with homework: sees it, begins, saves, asks for a hint, hands in. Nothing here tells an answer. */
import type {
  LearnerSet,
  PaperView,
  SaveBatch,
  SaveResults,
  Submitted,
} from '../../../shared/homework-views.ts';
import { mayReview, nextAttempt, paperStateOf, phaseOf, publicPaper } from '../../homework/index.ts';
import { hintFor } from '../../questions/index.ts';
import type { KeptSet, NewSave, PaperHead, Saved } from '../../store/index.ts';
import { say } from '../../words/index.ts';
import type { Asking } from '../people/gate.ts';
import { ApiFailure, noSuchThing } from '../problems.ts';
import { soon } from '../turns.ts';
import { learnersSet, wholePaper, workingPaper } from './access.ts';
import { askedOn, type Choices, notAsked } from './asked-on.ts';
import type { Desk } from './desk.ts';
import { paperOf } from './make-papers.ts';
import { settle } from './settle.ts';
import { outOf, totalIn } from './views.ts';

/** Milliseconds for which a list waits for papers that have still to be marked. */
const MARKING = 500;

/** Answers that one paper keeps on the way: a hundred for each of its items would be much. */
const MOST_SAVES = 10_000;

const isClosed = (): ApiFailure => new ApiFailure({ says: 'closed' });
const isSubmitted = (): ApiFailure => new ApiFailure({ says: 'submitted' });

function checkOpen({ set }: KeptSet, at: number): void {
  if (phaseOf(set, at) === 'closed') throw isClosed();
  if (phaseOf(set, at) === 'before') throw new ApiFailure({ says: 'not-open' });
}

function learnerSet(kept: KeptSet, classTitle: string, heads: readonly PaperHead[], at: number): LearnerSet {
  const { set } = kept;
  const state = phaseOf(set, at);
  const own = heads.filter((head) => head.set === set.id);
  return {
    id: set.id,
    title: set.title,
    opensAt: set.opensAt,
    closesAt: set.closesAt,
    classTitle,
    state,
    items: set.places.length,
    outOf: outOf(set),
    attemptsAllowed: set.attempts,
    help: set.help,
    review: set.review,
    attempts: own.flatMap((head) => {
      if (head.begunAt === null) return [];
      const may =
        mayReview(set, at, head.submittedAt !== null) && paperStateOf(set, head, at) === 'handed-in';
      return [
        {
          paper: head.id,
          attempt: head.attempt,
          begunAt: head.begunAt,
          submittedAt: head.submittedAt,
          mayReview: may,
          total: may ? totalIn(set, head) : null,
        },
      ];
    }),
    mayBegin: state === 'open' && nextAttempt(set, own, at) !== null,
  };
}

const RANKS = { open: 0, before: 1, closed: 2 } as const;

/** What orders sets of one state: those that close first, that open first, that closed last. */
const urgency = ({ state, opensAt, closesAt }: LearnerSet): number =>
  ({ open: closesAt, before: opensAt, closed: -closesAt })[state];

/** The learner's sets: what is open first, what closes first before the others; then what comes; then what closed last. */
export async function learnersSets(desk: Desk, asking: Asking): Promise<readonly LearnerSet[]> {
  const { homework, people } = desk.store;
  const classes = (await people.classes.of(asking.id)).filter(({ manner }) => manner === 'learner');
  const titles = new Map(classes.map(({ id, title }) => [id, title]));
  const sets = (await homework.setsOf([...titles.keys()])).filter(
    ({ issuedAt, withdrawnAt }) => issuedAt !== null && withdrawnAt === null,
  );
  let heads = await homework.papersOf(asking.id);
  let settled = 0;
  for (const kept of sets) {
    const own = heads.filter((head) => head.set === kept.set.id);
    settled += (await settle(desk, kept, own, soon(MARKING))).settled;
  }
  if (settled > 0) heads = await homework.papersOf(asking.id);
  const at = desk.now();
  return sets
    .map((kept) => learnerSet(kept, titles.get(kept.class) ?? '', heads, at))
    .sort(
      (one, other) =>
        RANKS[one.state] - RANKS[other.state] ||
        urgency(one) - urgency(other) ||
        (one.id < other.id ? -1 : 1),
    );
}

async function viewOf(desk: Desk, kept: KeptSet, head: PaperHead): Promise<PaperView> {
  const { homework } = desk.store;
  const paper = await wholePaper(desk, head);
  const at = desk.now();
  const hints = await homework.hintsOf(paper.id);
  const saved = await homework.answersOf(paper.id);
  return {
    id: paper.id,
    paper: publicPaper(desk.words, kept.set, paper.paper),
    now: at,
    submittedAt: paper.submittedAt,
    open: paperStateOf(kept.set, paper, at) === 'working' && phaseOf(kept.set, at) === 'open',
    // Of each item the last one, which counts: however often it was changed, the paper stays as small as it is.
    saved: [...new Map(saved.map(({ hint: _, ...answer }) => [answer.item, answer])).values()].sort(
      (one, other) => one.number - other.number,
    ),
    hints: hints.map((item) => ({
      item,
      text: say(desk.words.hints, hintFor(paper.paper.items[item]!.question)),
    })),
  };
}

/** The paper to go on with, or the next attempt's. */
export async function beginPaper(desk: Desk, asking: Asking, id: string): Promise<PaperView> {
  const { homework } = desk.store;
  const kept = await learnersSet(desk, asking, id);
  const at = desk.now();
  checkOpen(kept, at);
  const own = (await homework.papersOf(asking.id)).filter((head) => head.set === id);
  const next = nextAttempt(kept.set, own, at);
  if (!next) throw new ApiFailure({ says: 'no-attempts-left', attempts: kept.set.attempts });
  const head = 'goOn' in next ? next.goOn : await paperOf(desk, kept, asking.id, next.begin);
  await homework.begin(head.id);
  return viewOf(desk, kept, head);
}

export async function viewPaper(desk: Desk, asking: Asking, id: string): Promise<PaperView> {
  const { kept, paper } = await workingPaper(desk, asking, id);
  return viewOf(desk, kept, paper);
}

/** What keeps an answer from being one to its item; null when nothing does. */
function wrongWith(
  { set: { places } }: KeptSet,
  asked: readonly Choices[],
  { item, answer }: NewSave,
): ApiFailure | null {
  // Every paper of a set has the same kind of question in a place.
  const kind = places[item]?.kind;
  if (!kind) return new ApiFailure({ says: 'bad-answer.noItem', item: item + 1, items: places.length });
  if (answer.kind !== kind)
    return new ApiFailure({
      says: 'bad-answer.otherItem',
      item: item + 1,
      asked: kind,
      given: answer.kind,
    });
  return notAsked(asked[item]!, item, answer);
}

/** Saves answers; when it returns, they are on the disk. */
export async function saveAnswers(
  desk: Desk,
  asking: Asking,
  id: string,
  { answers }: SaveBatch,
): Promise<SaveResults> {
  const { kept, paper } = await workingPaper(desk, asking, id);
  if (phaseOf(kept.set, desk.now()) === 'before') checkOpen(kept, desk.now());
  if (paper.saves + answers.length > MOST_SAVES)
    throw new ApiFailure({ says: 'bad-value.tooManySaves', most: MOST_SAVES });
  const asked = await askedOn(desk, paper);
  const wrong = answers.map((answer) => wrongWith(kept, asked, answer));
  const good = answers.filter((_, index) => wrong[index] === null);
  const none: Saved = { result: 'saved', at: desk.now(), kept: [] };
  const saved = good.length === 0 ? none : await desk.store.homework.save(id, good);
  if (saved.result !== 'saved') throw saved.result === 'closed' ? isClosed() : isSubmitted();
  let next = 0;
  return {
    now: desk.now(),
    results: answers.map((answer, index): SaveResults['results'][number] => {
      const failure = wrong[index];
      if (failure) return { result: 'refused', id: answer.id, problem: failure.told(desk.words) };
      const { kept: isNew, number } = saved.kept[next++]!;
      return { result: isNew ? 'kept' : 'already', id: answer.id, number };
    }),
  };
}

/** The hint for an item; that it was asked for counts from then on. */
export async function askHint(
  desk: Desk,
  asking: Asking,
  id: string,
  item: number,
): Promise<{ readonly item: number; readonly text: string }> {
  const { kept, paper } = await workingPaper(desk, asking, id);
  if (kept.set.help !== 'hints') throw new ApiFailure({ says: 'no-hints' });
  const question = (await wholePaper(desk, paper)).paper.items[item]?.question;
  if (!question) throw noSuchThing();
  if (phaseOf(kept.set, desk.now()) === 'before') checkOpen(kept, desk.now());
  const noted = await desk.store.homework.hint(id, item);
  if (noted === 'closed') throw isClosed();
  if (noted === 'submitted') throw isSubmitted();
  return { item, text: say(desk.words.hints, hintFor(question)) };
}

/** Hands a paper in; twice is once. When it returns, that is on the disk; it is marked afterwards. */
export async function submitPaper(desk: Desk, asking: Asking, id: string): Promise<Submitted> {
  const { kept } = await workingPaper(desk, asking, id);
  if (phaseOf(kept.set, desk.now()) === 'before') checkOpen(kept, desk.now());
  const handed = await desk.store.homework.submit(id);
  if (handed.result === 'closed') throw isClosed();
  return {
    paper: id,
    submittedAt: handed.submittedAt,
    answered: await desk.store.homework.itemsSavedOn(id),
    items: kept.set.places.length,
    mayReview: mayReview(kept.set, desk.now(), true),
  };
}
