/** The candidates for a place on one learner's paper: an endless row of questions, each fixed by seed, place and number. */
import type { HomeworkPlace } from '../../../shared/homework.ts';
import type { Question, QuestionKind } from '../../../shared/question.ts';
import { type Accepted, fingerprint, generate, randomOf } from '../../generator/index.ts';
import { proposeQuestion } from '../../questions/index.ts';
import { questionDifficulty } from './difficulty.ts';

export interface Candidate {
  readonly question: Question;
  /** Fingerprint of the circuit that it asks about. */
  readonly circuit: string;
  readonly difficulty: number;
}

/** One thing, or several that don't all stand alike: of those the kinds ask, now and then only ones that do. */
const worthAsking = (states: readonly string[]): boolean =>
  states.length === 1 || states.some((state) => state !== states[0]);

/** Whether a draft can be asked about in a kind; tells most of those that can't, at no cost. */
function suits({ draft, after }: Accepted, kind: QuestionKind): boolean {
  switch (kind) {
    case 'sequence':
      return draft.scenario.acts.length > 1;
    case 'lamp-states':
      return worthAsking(after.lamps);
    case 'input-states':
      return worthAsking(after.inputs);
    case 'relay-states':
      return worthAsking(after.relays);
    case 'wiring':
    case 'meter':
    case 'still-live':
      return true;
  }
}

type Recipe = Pick<HomeworkPlace, 'kind' | 'families' | 'size'>;

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
    want: (accepted) => suits(accepted, place.kind),
  });
  if (!made.ok) return undefined;
  const { draft } = made.accepted;
  // A wiring question leaves conductors out: its circuit is known only with the question.
  const drawn = place.kind === 'wiring' ? undefined : fingerprint(draft.circuit);
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
