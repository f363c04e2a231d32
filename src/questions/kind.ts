import type { Circuit } from '../../shared/circuit.ts';
import type { Problem } from '../../shared/problem.ts';
import type { AnswerOf, MarkPart, QuestionKind, QuestionOf } from '../../shared/question.ts';
import type { Scenario } from '../../shared/scenario.ts';
import type { Draft, Random } from '../generator/index.ts';
import type { AnswerSaid } from '../words/index.ts';
import type { QuestionSaid } from './said.ts';
import type { Solve, Solver } from './solving.ts';

/** One part of an answer, and how many answers there were to choose from. */
export interface Part extends Omit<MarkPart, 'given' | 'right'> {
  /** What was answered; absent when it was left out. */
  readonly given?: AnswerSaid;
  readonly right: AnswerSaid;
  /** 0: a number was asked, which nobody guesses. */
  readonly choices: number;
}

export interface Parts {
  readonly parts: readonly Part[];
  /** What in the answer couldn't be understood. */
  readonly problems: readonly Problem[];
}

/**
 * A kind of question: a folder each in `kinds/`. How its typed answers are read and how it is explained stand apart, since not
 * everybody who asks needs these. The questions given to all but `propose` and `check` are ones that
 * `check` finds nothing wrong with.
 */
export interface Kind<K extends QuestionKind> {
  readonly kind: K;
  /** A good question of this kind on a draft, or undefined when the draft has none. */
  propose(draft: Draft, random: Random, solver: Solver): QuestionOf<K> | undefined;
  /** Whether a draft can be asked about at all; tells most of those that can't before anything is solved. Any can, without. */
  suits?(draft: Draft): boolean;
  /** What it asks begins with a supply, or what leads on from one, being taken away. */
  readonly takesAway?: true;
  /** How things stand after each act is asked, so an accepted draft need not end in something to ask about. */
  readonly asksCourse?: true;
  /** How something ought to be wired is asked, which a drawing as found doesn't show. */
  readonly asksWhatIsMeant?: true;
  /** The circuit asked about is another than the draft's. */
  readonly changesCircuit?: true;
  /** Lamps, inputs and relays that make it hard; the whole drawing does, without. */
  counted?(question: QuestionOf<K>): ReadonlySet<string>;
  /** An answer in which nothing is answered. */
  readonly blank: AnswerOf<K>;
  /** What keeps a question from having exactly one right answer; empty when nothing does. */
  check(question: QuestionOf<K>, solver: Solver): Problem[];
  /** What the question has to say. */
  ask(question: QuestionOf<K>): QuestionSaid;
  /** What somebody answers who solves circuits in this way; undefined when they come to no answer. */
  answerBy(question: QuestionOf<K>, solve: Solve): AnswerOf<K> | undefined;
  /** Compares an answer with the right one, part by part. Whatever it holds is data, never an exception. */
  parts(question: QuestionOf<K>, answer: AnswerOf<K>, right: AnswerOf<K>): Parts;
  /** The circuit and what is done to it as they are shown with the mark, where they are not the question's own. */
  shownWith?(
    question: QuestionOf<K>,
    right: AnswerOf<K>,
  ): { readonly circuit: Circuit; readonly scenario: Scenario };
  /** Loads that it is about, where they are not what is asked. */
  loads?(question: QuestionOf<K>): readonly string[];
  /** Further circuits of which a mark tells something, besides the one asked about. */
  alsoTold?(question: QuestionOf<K>): readonly (() => Circuit)[];
  /** The greatest chance of somebody who doesn't read the drawing to get all of it right; see luck.ts. */
  luck(question: QuestionOf<K>): number;
  /** What somebody who can do it takes, reading included; see time-expected.ts. */
  secondsExpected(question: QuestionOf<K>): number;
}
