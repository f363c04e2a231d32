/** Marked papers: for their learner when he may, for the tutor always; overrides, and marks that were typed in. */
import type { PaperMark, ToldPaperMark } from '../../../shared/homework.ts';
import type {
  MarkedPaper,
  OverrideWish,
  PaperReview,
  PaperRow,
  TypedMarks,
  TypedResult,
} from '../../../shared/homework-views.ts';
import type { Checked } from '../../../shared/problem.ts';
import {
  countedAnswers,
  learnerReport,
  mayReview,
  overrideMark,
  paperStateOf,
  readCode,
  tellLearnerReport,
  totalOf,
} from '../../homework/index.ts';
import type { KeptPaper, KeptSet, PaperHead } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { ApiFailure } from '../problems.ts';
import { soon } from '../turns.ts';
import { checkIssued, ownPaper, tutorsPaper, tutorsSet, wholePaper } from './access.ts';
import { type Desk, workFor } from './desk.ts';
import { settledHeads, settlePaper } from './settle.ts';
import { totalIn, withoutSeeds } from './views.ts';

/** The mark of a paper that was handed in, marked now where it wasn't. */
async function settledMark(desk: Desk, kept: KeptSet, { id }: PaperHead): Promise<PaperMark> {
  await settlePaper(desk, kept, id);
  const mark = await desk.store.homework.markOf(id);
  if (!mark) throw new ApiFailure({ says: 'not-handed-in' });
  return mark;
}

/** A mark in words, with the explanations. */
async function toldPaper(desk: Desk, { id, paper }: KeptPaper, mark: PaperMark): Promise<ToldPaperMark> {
  const told = await workFor(desk, id, 'tellMarks', {
    language: desk.words.speech.language,
    marks: mark.items.map((item, index) => ({
      question: paper.items[index]!.question,
      mark: item.mark,
    })),
  });
  return { ...mark, items: mark.items.map((item, index) => ({ ...item, mark: told[index]! })) };
}

/** Everything about a paper that was handed in. */
async function reviewOf(desk: Desk, kept: KeptSet, head: PaperHead): Promise<PaperReview> {
  const { homework } = desk.store;
  const mark = await settledMark(desk, kept, head);
  const paper = await wholePaper(desk, head);
  const counted = countedAnswers(kept.set, await homework.answersOf(paper.id));
  return {
    id: paper.id,
    title: kept.set.title,
    paper: withoutSeeds(paper.paper),
    answers: [...counted.values()]
      .map(({ item, answer, at, secondsUsed, hint }) => ({ item, answer, at, secondsUsed, hint }))
      .sort((one, other) => one.item - other.item),
    mark: await toldPaper(desk, paper, mark),
    // Told as it is sent: lists that may be added to.
    report: tellLearnerReport(desk.words, learnerReport(mark, desk.course)),
    submittedAt: paper.submittedAt,
  };
}

/** Why a paper may not be looked through, by when it may be. */
const NO_REVIEW = {
  never: 'no-review.never',
  'after-closing': 'no-review.beforeClosing',
  'after-submitting': 'no-review.beforeHandIn',
} as const;

export async function reviewPaper(desk: Desk, asking: Asking, id: string): Promise<PaperReview> {
  const { kept, paper } = await ownPaper(desk, asking, id);
  const at = desk.now();
  if (!mayReview(kept.set, at, paper.submittedAt !== null))
    throw new ApiFailure({ says: NO_REVIEW[kept.set.review] });
  if (paperStateOf(kept.set, paper, at) !== 'handed-in') throw new ApiFailure({ says: 'no-review.nothing' });
  return reviewOf(desk, kept, paper);
}

export async function nameOf({ store }: Desk, learner: string): Promise<string> {
  return (await store.people.persons.byId(learner))?.name ?? learner;
}

export async function markedPaper(desk: Desk, asking: Asking, id: string): Promise<MarkedPaper> {
  const { kept, paper } = await tutorsPaper(desk, asking, id);
  const review = await reviewOf(desk, kept, paper);
  const tried = (await desk.store.homework.triedIn([id])).get(id) ?? [];
  return { ...review, code: paper.code, name: await nameOf(desk, paper.learner), tried: [...tried] };
}

/** Throws what is wrong with a tutor's marks. */
function checkMarks(checked: Checked<PaperMark>): PaperMark {
  if (checked.ok) return checked.value;
  throw new ApiFailure({ says: 'bad-mark', problems: checked.problems.slice(0, 1) });
}

/** What another tutor has given since this one looked. */
async function markedMeanwhile(desk: Desk, id: string, item: number): Promise<ApiFailure> {
  const marked = (await desk.store.homework.markOf(id))?.items[item];
  const last = marked?.overrides.at(-1);
  if (!marked || !last) return new ApiFailure({ says: 'marked-meanwhile.bySomebody', item: item + 1 });
  return new ApiFailure({
    says: 'marked-meanwhile',
    by: await nameOf(desk, last.by),
    item: item + 1,
    earned: last.earned,
    of: marked.marks,
    reason: last.reason,
  });
}

export async function overridePaper(
  desk: Desk,
  asking: Asking,
  id: string,
  { item, earned, reason, known }: OverrideWish,
): Promise<MarkedPaper> {
  const { kept, paper } = await tutorsPaper(desk, asking, id);
  const mark = await settledMark(desk, kept, paper);
  const override = { earned, reason, by: asking.id, at: desk.now() };
  checkMarks(overrideMark(mark, item, override));
  const wanted = { item, override, ...(known === undefined ? {} : { known }) };
  if ((await desk.store.homework.override(id, [wanted])) === 'changed')
    throw await markedMeanwhile(desk, id, item);
  return markedPaper(desk, asking, id);
}

/** Takes the marks of a paper that was written on paper. It counts as handed in then, also after closing time. */
export async function typeMarks(
  desk: Desk,
  asking: Asking,
  id: string,
  { code, marks }: TypedMarks,
): Promise<TypedResult> {
  const { homework } = desk.store;
  const kept = await tutorsSet(desk, asking, id);
  checkIssued(kept);
  const read = readCode(code);
  if (!read.ok) throw new ApiFailure({ says: 'no-such-code', problems: read.problems.slice(0, 1) });
  const paper = await homework.paperByCode(id, read.value);
  if (!paper) throw new ApiFailure({ says: 'no-such-code', code });
  const { items } = paper.paper;
  if (marks.length !== items.length)
    throw new ApiFailure({ says: 'bad-mark.count', marks: marks.length, items: items.length });
  const counted = countedAnswers(kept.set, await homework.answersOf(paper.id));
  const first =
    (await homework.markOf(paper.id)) ??
    (await workFor(desk, id, 'markPaper', { paper: paper.paper, counted }));
  const at = desk.now();
  const given = marks.flatMap((earned, item) =>
    earned === null
      ? []
      : [{ item, override: { earned, reason: desk.words.server.kept.markedOnPaper, by: asking.id, at } }],
  );
  let mark = first;
  for (const { item, override } of given) mark = checkMarks(overrideMark(mark, item, override));
  // Somebody saw an answer to whatever has marks; what it was isn't known.
  const seen = {
    ...first,
    items: first.items.map((item, index) =>
      item.answered === 'none' && marks[index] !== null ? { ...item, answered: 'all' as const } : item,
    ),
  };
  await homework.typed(paper.id, seen, given);
  const whole = (await homework.markOf(paper.id)) ?? mark;
  return {
    paper: paper.id,
    learner: paper.learner,
    name: await nameOf(desk, paper.learner),
    attempt: paper.attempt,
    total: totalOf(whole),
  };
}

/** Milliseconds for which a list waits for papers that have still to be marked. */
const MARKING = 1500;

/** Everybody's papers, those of learners who have left the class included. */
export async function paperRows(
  desk: Desk,
  asking: Asking,
  id: string,
): Promise<{ readonly papers: readonly PaperRow[]; readonly waiting: number }> {
  const { homework, people } = desk.store;
  const kept = await tutorsSet(desk, asking, id);
  const { heads, waiting } = await settledHeads(desk, [kept], soon(MARKING));
  const saved = await homework.itemsSaved(id);
  const names = new Map((await people.classes.members(kept.class)).map((member) => [member.id, member.name]));
  const tried = await homework.triedIn(heads.map((head) => head.id));
  const rows: PaperRow[] = [];
  for (const head of heads)
    rows.push({
      id: head.id,
      code: head.code,
      learner: head.learner,
      name: names.get(head.learner) ?? (await nameOf(desk, head.learner)),
      attempt: head.attempt,
      madeAt: head.madeAt,
      begunAt: head.begunAt,
      submittedAt: head.submittedAt,
      markedAt: head.markedAt,
      saved: saved.get(head.id) ?? 0,
      tried: new Set(tried.get(head.id)?.map(({ item }) => item)).size,
      total: totalIn(kept.set, head),
    });
  return { papers: rows.sort((one, other) => one.name.localeCompare(other.name, 'en')), waiting };
}
