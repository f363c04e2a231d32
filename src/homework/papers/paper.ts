/** A learner's own paper: the same skills, kinds and difficulty as everybody's, place by place, on circuits of its own. */
import type {
  HomeworkPlace,
  HomeworkSet,
  Paper,
  PaperItem,
  PublicPaper,
  Seat,
} from '../../../shared/homework.ts';
import type { Checked, Problem } from '../../../shared/problem.ts';
import { publicQuestion, secondsExpected } from '../../questions/index.ts';
import type { Words } from '../../words/index.ts';
import { homeworkProblem } from '../problem-codes.ts';
import { finish } from '../steps.ts';
import { type Candidate, candidateFor } from './candidate.ts';
import { toleranceOf } from './difficulty.ts';

/** Candidates looked at for one place before it is said that there are no more. */
const MOST_DRAWS = 200;

/** Whether somebody already has this circuit (by its fingerprint) in that place, counted from 0. */
export type Taken = (place: number, circuit: string) => boolean;

const nobody: Taken = () => false;

const itemOf = (
  { skill, marks }: HomeworkPlace,
  { question, circuit, difficulty }: Candidate,
  draw: number,
): PaperItem => ({
  skill,
  question,
  circuit,
  difficulty,
  secondsExpected: secondsExpected(question),
  marks,
  draw,
});

interface Sought {
  readonly item: PaperItem | undefined;
  /** Whether a candidate fitted but for its circuit, which somebody has. */
  readonly taken: boolean;
}

function seek(set: HomeworkSet, seed: string, index: number, taken: Taken): Sought {
  const place = set.places[index]!;
  const tolerance = toleranceOf(place.difficulty);
  const fits = ({ difficulty }: Candidate): boolean => Math.abs(difficulty - place.difficulty) <= tolerance;
  const passed: number[] = [];
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const candidate = candidateFor(place, seed, index, draw, (circuit) => taken(index, circuit));
    if (candidate === 'taken') passed.push(draw);
    else if (candidate && fits(candidate)) return { item: itemOf(place, candidate, draw), taken: false };
  }
  // What was passed over unasked is asked only now that the reason has to be given.
  const fitted = passed.some((draw) => {
    const candidate = candidateFor(place, seed, index, draw);
    return candidate !== undefined && fits(candidate);
  });
  return { item: undefined, taken: fitted };
}

const noItem = (set: HomeworkSet, index: number, taken: boolean): Problem => {
  const { kind, families } = set.places[index]!;
  const place = index + 1;
  return homeworkProblem(
    taken
      ? { says: 'homework-too-few-circuits', place }
      : { says: 'homework-no-question.place', place, kind, families },
  );
};

/**
 * One learner's paper. It follows from the set, the seat's seed and from which circuits are taken; the seed comes from
 * outside as a keyed hash of set, learner and attempt. No circuit is on it twice.
 *
 * Fails with `homework-no-question` and `homework-too-few-circuits`, all places at once.
 */
export const paperFor = (set: HomeworkSet, seat: Seat, taken: Taken = nobody): Checked<Paper> =>
  finish(paperInSteps(set, seat, taken));

/** The same in steps of one item each, for whoever has other things to do in between. */
export function* paperInSteps(
  set: HomeworkSet,
  seat: Seat,
  taken: Taken = nobody,
): Generator<undefined, Checked<Paper>> {
  const items: PaperItem[] = [];
  const problems: Problem[] = [];
  const own = new Set<string>();
  for (let index = 0; index < set.places.length; index++) {
    const sought = seek(set, seat.seed, index, (place, circuit) => own.has(circuit) || taken(place, circuit));
    if (sought.item) {
      items.push(sought.item);
      own.add(sought.item.circuit);
    } else problems.push(noItem(set, index, sought.taken));
    yield undefined;
  }
  const { learner, attempt } = seat;
  return problems.length > 0
    ? { ok: false, problems }
    : { ok: true, value: { set: set.id, learner, attempt, items } };
}

/** Notes which circuits papers have, place by place. */
export function takenBy(papers: Iterable<Paper>): { readonly taken: Taken; add(paper: Paper): void } {
  const places: Set<string>[] = [];
  const add = ({ items }: Paper): void =>
    items.forEach(({ circuit }, place) => {
      const known = places[place];
      if (known) known.add(circuit);
      else places[place] = new Set([circuit]);
    });
  for (const paper of papers) add(paper);
  return { add, taken: (place, circuit) => places[place]?.has(circuit) === true };
}

/**
 * The papers of a whole class, in the order of the seats: no two have the same circuit in the same place, nor one that
 * `before` has (papers issued earlier). The first that can't be made ends it.
 */
export function papersFor(
  set: HomeworkSet,
  seats: readonly Seat[],
  before: Iterable<Paper> = [],
): Checked<readonly Paper[]> {
  const { taken, add } = takenBy(before);
  const papers: Paper[] = [];
  for (const seat of seats) {
    const made = paperFor(set, seat, taken);
    if (!made.ok) return made;
    add(made.value);
    papers.push(made.value);
  }
  return { ok: true, value: papers };
}

/**
 * Papers that were made apart (by several workers, each for a part of the class) as those of one class: where two have the
 * same circuit in the same place, the later one is made anew. Seats and papers stand in the same order.
 */
export function joinPapers(
  set: HomeworkSet,
  seats: readonly Seat[],
  papers: readonly Paper[],
): Checked<readonly Paper[]> {
  const { taken, add } = takenBy([]);
  const joined: Paper[] = [];
  for (const [index, seat] of seats.entries()) {
    const paper = papers[index]!;
    const clashes = paper.items.some(({ circuit }, place) => taken(place, circuit));
    const made: Checked<Paper> = clashes ? paperFor(set, seat, taken) : { ok: true, value: paper };
    if (!made.ok) return made;
    add(made.value);
    joined.push(made.value);
  }
  return { ok: true, value: joined };
}

/**
 * The same paper again from the set, the seed and the draws that are kept with it, without asking who else has what.
 * Undefined where this version of the program no longer makes those questions; the kept paper is what counts.
 */
export function paperAgain(set: HomeworkSet, seat: Seat, draws: readonly number[]): Paper | undefined {
  const items: PaperItem[] = [];
  for (const [index, place] of set.places.entries()) {
    const draw = draws[index];
    const candidate = draw === undefined ? undefined : candidateFor(place, seat.seed, index, draw);
    if (!candidate || draw === undefined) return undefined;
    items.push(itemOf(place, candidate, draw));
  }
  return { set: set.id, learner: seat.learner, attempt: seat.attempt, items };
}

/** What may be sent before submission, in words. */
export const publicPaper = (words: Words, set: HomeworkSet, { attempt, items }: Paper): PublicPaper => ({
  set: set.id,
  title: set.title,
  attempt,
  opensAt: set.opensAt,
  closesAt: set.closesAt,
  help: set.help,
  items: items.map(({ marks, question }) => ({ marks, question: publicQuestion(words, question) })),
});
