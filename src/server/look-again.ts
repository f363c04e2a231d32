import type { Recipe } from '../../shared/bank.ts';
import type { IssuedQuestion } from '../../shared/issued.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { fingerprint } from '../generator/index.ts';
import { passedOverFor } from '../practice/index.ts';
import { circuitsTold, markAnswer, secondsExpected } from '../questions/index.ts';
import { type Found, sameMark } from '../store/index.ts';

/**
 * How large a question may be to be marked here: some three times the largest that the generator makes (35 devices, 31
 * paths, 134 stops, 10 acts). What an answer to a larger one says of itself is kept and earns nothing.
 */
const MOST_MARKED = { devices: 120, paths: 120, stops: 480, acts: 40 } as const;

function isMarkable({ circuit: { devices, paths }, scenario: { acts } }: AnswerRecord['question']): boolean {
  const stops = paths.reduce((sum, { steps }) => sum + steps.length, 0);
  return (
    devices.length <= MOST_MARKED.devices &&
    paths.length <= MOST_MARKED.paths &&
    stops <= MOST_MARKED.stops &&
    acts.length <= MOST_MARKED.acts
  );
}

/** For a question that has no right answer, or none that is found in time: nothing can be earned by it. */
export const worthless = ({ mark, circuit }: AnswerRecord): Found => ({
  mark: { ...mark, share: 0, correct: false, parts: [], misconceptions: [] },
  circuit,
});

function lookAt(record: AnswerRecord): Found {
  const { question, answer } = record;
  if (!isMarkable(question)) return worthless(record);
  try {
    return { mark: markAnswer(question, answer).mark, circuit: fingerprint(question.circuit) };
  } catch {
    // A question of anybody's making. Whatever is wrong with it, the answers beside it have to be kept.
    return worthless(record);
  }
}

/** An issued question that an answer may be to, with what it is made with. */
export interface IssueToLookAt {
  readonly issue: IssuedQuestion;
  readonly recipes: readonly Recipe[];
}

/** What this server's own solver makes of an answer that a device marked by itself. */
export interface Look {
  /** Null where it is what the record says. */
  readonly found: Found | null;
  /** The circuit, of those guarded, of which a mark would tell something; it isn't marked then. */
  readonly onOpenPaper: string | null;
  /** Null where it isn't the question that was issued; else the circuits passed over for it, which have to have been seen. */
  readonly passedOver: readonly string[] | null;
}

/** @param guarded - circuits of papers that the learner can still work on, by fingerprint */
export function lookAgain(
  record: AnswerRecord,
  guarded: ReadonlySet<string>,
  issued: IssueToLookAt | null,
): Look {
  if (guarded.size > 0 && isMarkable(record.question)) {
    const touched = circuitsTold(record.question).find((circuit) => guarded.has(circuit));
    if (touched !== undefined) return { found: null, onOpenPaper: touched, passedOver: null };
  }
  const passedOver = issued && passedOverFor(issued.recipes, issued.issue, record.question);
  const found = lookAt(record);
  // What an answer proves is held against the time that this server expects, not the one that the device says.
  if (passedOver)
    return {
      found: { ...found, secondsExpected: secondsExpected(record.question) },
      onOpenPaper: null,
      passedOver,
    };
  const same = found.circuit === record.circuit && sameMark(found.mark, record.mark);
  return { found: same ? null : found, onOpenPaper: null, passedOver };
}
