/** Questions, answers and marks. A question is a circuit, a scenario and something to read off; the solver reads it off. */
import { z } from 'zod';
import { circuit } from './circuit.ts';
import { problem } from './problem.ts';
import { QUESTION_KINDS } from './question-kinds.ts';
import type { answer, question } from './questions/index.ts';
import { scenario } from './scenario.ts';

export const questionKind = z.enum(QUESTION_KINDS);

export { answer, question } from './questions/index.ts';

/** One thing that is asked. */
export const askedItem = z.strictObject({
  /** The key of `states`, or `choice`, `volts`. */
  item: z.string(),
  /** How it is named: `-H1 "Fan healthy"`; with the moment before it, where it is asked for several. */
  label: z.string(),
  /** The moment alone: `after 2 (press -S1 ("Start"))`; and after how many acts it is. */
  moment: z.string().optional(),
  after: z.number().int().optional(),
  /** What is asked without its moment, whole and in its parts: `-H1` and `Fan healthy`. */
  named: z.strictObject({ label: z.string(), name: z.string(), text: z.string().optional() }).optional(),
  /** The possible answers in words, in the order in which they are offered; empty where a number is asked. */
  choices: z.array(z.string()).max(16),
  /** The same as an answer holds them: the names of states; of a pair of terminals both, `-K3:11 -K3:14`. */
  values: z.array(z.string()).max(16),
  /** Of the number. */
  unit: z.literal('V').optional(),
  /** Devices and terminals to point at on the drawing. */
  about: z.array(z.string()),
});

/**
 * How a question is answered. `states`: each thing asked has one of some states. `choice`: one of several pairs of terminals.
 * `reading`: a number of volts, or that a meter shows nothing.
 */
export const answerForm = z.enum(['states', 'choice', 'reading']);

/** A question in words. Nothing in it depends on the right answer. */
export const asked = z.strictObject({
  title: z.string(),
  form: answerForm,
  /** The starting state, the faults and what is done, sentence by sentence. */
  situation: z.array(z.string()),
  task: z.string(),
  items: z.array(askedItem).min(1),
  /** How to write the answer where there is only a line of text. */
  how: z.string(),
  /** What to mind where the question touches measuring or isolating. */
  cautions: z.array(z.string()),
});

/** What may be shown before the answer is given. */
export const publicQuestion = z.strictObject({
  kind: questionKind,
  circuit,
  scenario,
  asked,
});

/**
 * Something that was or could be answered, as data: `{ says: "lit" }`, `{ says: "volts", volts: 24 }`. Which there are, the
 * words of the answers say (src/words/en/answers.ts); one that a later version wrote is kept as it is.
 */
export const answerData = z
  .object({ says: z.string().min(1).max(40) })
  .catchall(z.union([z.string().max(200), z.number()]));

export const markPart = z.strictObject({
  /** What was asked: the key of `states`, or `choice`, `volts`. */
  item: z.string(),
  /** What was answered; absent when it was left out. */
  given: answerData.optional(),
  right: answerData,
  correct: z.boolean(),
});

/** A mark as it is kept: data only. Why the right answer is right follows from the question. */
export const mark = z.strictObject({
  /** Share of the parts that are right, 0 to 1, after the kind's own rule against guessing. */
  share: z.number().min(0).max(1),
  correct: z.boolean(),
  parts: z.array(markPart),
  /** Ids of the wrong ideas that give exactly this answer; empty when none does, or the answer is right. */
  misconceptions: z.array(z.string().min(1).max(60)),
});

export const toldPart = z.strictObject({
  ...markPart.shape,
  given: z.string().optional(),
  right: z.string(),
});

export const explanationStep = z.strictObject({
  text: z.string(),
  /** Devices and terminals the step is about, to point at on the drawing. */
  about: z.array(z.string()),
});

/** Why one thing asked stands as it stands: a sentence, and why the relays stand so that it hangs on. */
export const decision = z.strictObject({
  /** The part of the mark that it is about; absent where it is about none of them. */
  item: z.string().optional(),
  ...explanationStep.shape,
  /** Empty where the part is right. */
  behind: z.array(explanationStep),
});

/** Why the right answer is right. */
export const explanation = z.strictObject({
  /** What decides, part by part: shortly where it was answered rightly. */
  decides: z.array(decision),
  /** What happens, in its order. */
  story: z.array(explanationStep),
});

/** A wrong idea that gives exactly this answer. */
export const wrongIdea = z.strictObject({ id: z.string(), idea: z.string(), advice: z.string() });

/** A mark in words, with everything that goes with it. */
export const toldMark = z.strictObject({
  share: mark.shape.share,
  correct: z.boolean(),
  parts: z.array(toldPart),
  misconceptions: z.array(wrongIdea),
  explanation,
  /** What in the answer couldn't be understood: something that wasn't asked, a word that is no state. It earns nothing. */
  problems: z.array(problem),
});

export type QuestionKind = z.infer<typeof questionKind>;
export type Question = Readonly<z.infer<typeof question>>;
export type QuestionOf<K extends QuestionKind> = Extract<Question, { kind: K }>;
export type Answer = Readonly<z.infer<typeof answer>>;
export type AnswerOf<K extends QuestionKind> = Extract<Answer, { kind: K }>;
export type MarkPart = Readonly<z.infer<typeof markPart>>;
export type ToldPart = Readonly<z.infer<typeof toldPart>>;
export type ToldStep = Readonly<z.infer<typeof explanationStep>>;
export type ToldExplanation = Readonly<z.infer<typeof explanation>>;
export type ToldMark = Readonly<z.infer<typeof toldMark>>;
export type WrongIdea = Readonly<z.infer<typeof wrongIdea>>;
export type Mark = Readonly<z.infer<typeof mark>>;
export type AnswerForm = z.infer<typeof answerForm>;
export type AskedItem = Readonly<z.infer<typeof askedItem>>;
export type Asked = Readonly<z.infer<typeof asked>>;
export type PublicQuestion = Readonly<z.infer<typeof publicQuestion>>;
