/** What a question and a mark have to say, as statements; `told.ts` says them in a language. */
import type { Problem } from '../../shared/problem.ts';
import type { AnswerForm, Mark, QuestionKind } from '../../shared/question.ts';
import type {
  AnswerSaid,
  CautionSaid,
  ExplainingSaid,
  LabelSaid,
  Said,
  SituationSaid,
  StatementOf,
  Words,
} from '../words/index.ts';

/** A statement of a kind's own: its task, how it is answered, and what else it has to say. */
export type KindSaid<K extends QuestionKind> = StatementOf<Words['kinds'][K]>;

/** One thing that is asked. */
export interface ItemSaid {
  /** The key of `states`, or `choice`, `volts`. */
  readonly item: string;
  readonly label: LabelSaid;
  /** The possible answers, in the order in which they are offered; empty where a number is asked. */
  readonly choices: readonly AnswerSaid[];
  readonly unit?: 'V';
  /** Devices and terminals to point at on the drawing. */
  readonly about: readonly string[];
}

/** A question. Nothing in it depends on the right answer. */
export interface QuestionSaid {
  readonly kind: QuestionKind;
  readonly form: AnswerForm;
  /** The starting state, the faults and what is done, sentence by sentence; then what the kind has to add. */
  readonly situation: readonly SituationSaid[];
  readonly besides: readonly Said[];
  /** Of the kind's own words. */
  readonly task: Said;
  readonly how: Said;
  readonly items: readonly ItemSaid[];
  /** What to mind where the question touches measuring or isolating. */
  readonly cautions: readonly CautionSaid[];
}

/** One step of an explanation, and the devices and terminals it is about, to point at on the drawing. */
export interface ExplanationStep {
  readonly said: ExplainingSaid;
  readonly about: readonly string[];
}

/** A relay at one point of a scenario, which a statement tells of. */
export interface ToldOf {
  readonly relay: string;
  /** The same text for the same point. */
  readonly moment: string;
}

/** A reason, which others may share: why a relay stands as it stands. */
export interface Reason extends ExplanationStep {
  readonly of?: ToldOf;
  /** The relays for which it is a reason; none where it is one for what was asked itself. */
  readonly under?: readonly string[];
}

/** What decides how one thing stands that was asked. */
export interface Decision extends ExplanationStep {
  /** Its key in the mark's parts; absent where it is told whatever was answered. */
  readonly item?: string;
  /** For whoever had it right. */
  readonly brief: ExplainingSaid;
  /** Why the relays stand as they stand that it hangs on, back to the cause. */
  readonly behind: readonly Reason[];
  /** The relay that was asked about. */
  readonly of?: ToldOf;
  /** What would have come of answers that are wrong, each by itself. */
  readonly instead?: readonly { readonly given: AnswerSaid; readonly step: ExplanationStep }[];
}

/** Why the right answer is right: what decides each thing asked, and what happens, in its order. */
export interface Explanation {
  readonly decides: readonly Decision[];
  readonly story: readonly ExplanationStep[];
}

/** An answer marked. */
export interface Marking {
  readonly mark: Mark;
  /** What in the answer couldn't be understood: it earns nothing. */
  readonly problems: readonly Problem[];
}
