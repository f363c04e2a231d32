/** The candidates for a place on one learner's paper: an endless row of questions, each fixed by seed, place and number. */
import type { HomeworkPlace } from '../../../shared/homework.ts';
import type { Question } from '../../../shared/question.ts';
import { AS_FOUND_SHARE, fingerprint, generate, randomOf } from '../../generator/index.ts';
import { askCourse, changesCircuit, mayAsk, mayBeAsFound, proposeQuestion } from '../../questions/index.ts';
import { questionDifficulty } from './difficulty.ts';

export interface Candidate {
  readonly question: Question;
  /** Fingerprint of the circuit that it asks about. */
  readonly circuit: string;
  readonly difficulty: number;
}

type Recipe = Pick<HomeworkPlace, 'kind' | 'families' | 'size' | 'happens'>;

/**
 * Candidate `draw` for the place at `index`; undefined where that draw comes to nothing. Nothing about the difficulty is
 * held yet. With `taken`, one whose circuit somebody has is `'taken'`, mostly before any question is thought of.
 */
export function candidateFor(place: Recipe, seed: string, index: number, draw: number): Candidate | undefined;
export function candidateFor(
  place: Recipe,
  seed: string,
  index: number,
  draw: number,
  taken: (circuit: string) => boolean,
): Candidate | 'taken' | undefined;
export function candidateFor(
  place: Recipe,
  seed: string,
  index: number,
  draw: number,
  taken?: (circuit: string) => boolean,
): Candidate | 'taken' | undefined {
  const child = `${seed}/${index}/${draw}`;
  const family = randomOf(`${child}/family`).pick(place.families);
  const made = generate({
    seed: child,
    family,
    size: place.size,
    asFound: mayBeAsFound([place.kind]) && randomOf(`${child}/as-found`).chance(AS_FOUND_SHARE),
    course: askCourse([place.kind]),
    mayAsk: mayAsk([place.kind], place.happens),
  });
  if (!made.ok) return undefined;
  const { draft } = made.accepted;
  // Where a kind changes the circuit, that is known only with the question.
  const drawn = changesCircuit(place.kind) ? undefined : fingerprint(draft.circuit);
  if (drawn !== undefined && taken?.(drawn)) return 'taken';
  const question = proposeQuestion(draft, [place.kind], randomOf(`${child}/question`));
  if (!question) return undefined;
  const circuit = drawn ?? fingerprint(question.circuit);
  if (drawn === undefined && taken?.(circuit)) return 'taken';
  return {
    question: { ...question, seed: child },
    circuit,
    difficulty: questionDifficulty(made.accepted, question),
  };
}
