/** Why the right answer is right, and what to look at first, by kind. Apart from the kinds: a question is asked without. */
import type { QuestionKind, QuestionOf } from '../../../shared/question.ts';
import type { HintSaid } from '../../words/index.ts';
import { explainMeter, hintMeter } from '../kinds/meter/explain.ts';
import { explainLive, hintLive } from '../kinds/still-live/explain.ts';
import { explainWiring, hintWiring } from '../kinds/wiring/explain.ts';
import type { Explanation } from '../said.ts';
import { explainStates, hintStates } from './explain-states.ts';

export interface Explainer<K extends QuestionKind> {
  /** Why the right answer is right, from the solver's trace. */
  explain(question: QuestionOf<K>): Explanation;
  /** The first thing to look at. It doesn't tell the answer. */
  hint(question: QuestionOf<K>): HintSaid;
}

const states = { explain: explainStates, hint: hintStates };

const EXPLAINERS: { readonly [K in QuestionKind]: Explainer<K> } = {
  'lamp-states': states,
  'input-states': states,
  'relay-states': states,
  wiring: { explain: explainWiring, hint: hintWiring },
  meter: { explain: explainMeter, hint: hintMeter },
  sequence: states,
  'still-live': { explain: explainLive, hint: hintLive },
};

/** The explainer of a kind; used with questions of the same kind. */
export const explainerOf = <K extends QuestionKind>(kind: K): Explainer<K> => EXPLAINERS[kind];
