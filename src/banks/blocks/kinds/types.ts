import type { Circuit } from '../../../../shared/circuit.ts';
import type { Answer, Question, QuestionKind } from '../../../../shared/question.ts';
import type { Scenario } from '../../../../shared/scenario.ts';
import type { Position } from '../../position.ts';
import type { BankReport } from '../../report.ts';
import type { Field } from '../fields.ts';

/** What every question has, read before its kind is asked for the rest. */
export interface QuestionBase {
  readonly circuit: Circuit;
  readonly scenario: Scenario;
  readonly family: 'fixed';
}

export interface KindInput {
  readonly base: QuestionBase;
  /** A field of the question, where it is there. */
  has(key: string): Field | undefined;
  /** A field that the kind needs; reports it when it isn't there. */
  need(key: string): Field | undefined;
  readonly report: BankReport;
}

/** A question and its author's answer, not yet confirmed. */
export interface AskedQuestion {
  readonly question: Question;
  readonly answer: Answer;
  /**
   * The author's words for each item answered (where it has a name), and where its answer stands, by its key in the
   * mark's parts.
   */
  readonly answered: ReadonlyMap<string, { readonly text?: string; readonly position: Position }>;
  /** The circuit to be held against the drawing rules, where it isn't the question's as it stands. */
  readonly drawn?: Circuit;
}

/** How the fields of one kind of question are read. */
export interface KindReader {
  readonly kind: QuestionKind;
  /** Its own keys, beside those of every question. */
  readonly keys: readonly string[];
  /** Undefined when something in it is wrong (every mistake reported). */
  read(input: KindInput): AskedQuestion | undefined;
}
