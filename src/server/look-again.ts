import type { AnswerRecord } from '../../shared/practice.ts';
import type { Mark } from '../../shared/question.ts';
import { fingerprint } from '../generator/index.ts';
import { markAnswer } from '../questions/index.ts';
import { type Found, sameMark } from '../store/index.ts';

/** For a question that has no right answer: nothing can be earned by it. */
const worthless = ({ mark }: AnswerRecord): Mark => ({
  ...mark,
  share: 0,
  correct: false,
  parts: [],
  misconceptions: [],
  explanation: [],
});

function lookAt(record: AnswerRecord): Found {
  try {
    const { question, answer } = record;
    return { mark: markAnswer(question, answer), circuit: fingerprint(question.circuit) };
  } catch {
    // A question of anybody's making. Whatever is wrong with it, the answers beside it have to be kept.
    return { mark: worthless(record), circuit: record.circuit };
  }
}

/**
 * What this server's own solver makes of an answer that a device marked by itself; null where it is what the record says.
 * Where others rely on what somebody can do, the word of that person's device is not enough.
 */
export function lookAgain(record: AnswerRecord): Found | null {
  const found = lookAt(record);
  return found.circuit === record.circuit && sameMark(found.mark, record.mark) ? null : found;
}
