/** Three weeks of practice of one made-up learner, as the page would have kept it. */
import type { Recall } from '../../../shared/memory.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import { type Random, randomOf } from '../../generator/index.ts';
import { type Course, judge, nextTask } from '../../practice/index.ts';
import { madeUpAnswer } from './made-up-answers.ts';
import type { MadeUpLearner } from './made-up-people.ts';

const MINUTE = 60_000;
const QUESTIONS_A_DAY = 7;
export const WEEKS = 3;

/** A learner on the way through the three weeks. */
export interface Practising {
  readonly learner: MadeUpLearner;
  readonly id: string;
  readonly random: Random;
  readonly recalls: Map<string, Recall>;
  readonly seen: Set<string>;
  /** How many questions of each skill were answered, homework's too. */
  readonly practised: Map<string, number>;
  number: number;
}

export const startPractising = (learner: MadeUpLearner, id: string): Practising => ({
  learner,
  id,
  random: randomOf(`demo/${learner.signIn}`),
  recalls: new Map(),
  seen: new Set(),
  practised: new Map(),
  number: 0,
});

export const isWorkday = (at: number): boolean => ![0, 6].includes(new Date(at).getDay());

/**
 * What is answered on the day that begins at `day` (milliseconds since 1970), in the evening; nothing at weekends, and not
 * on every day.
 */
export function practiseDay(course: Course, practising: Practising, day: number): readonly AnswerRecord[] {
  const { learner, id, random, recalls, seen, practised } = practising;
  if (!isWorkday(day) || !random.chance(learner.diligence)) return [];
  const records: AnswerRecord[] = [];
  const recent: string[] = [];
  let at = day + 17 * 60 * MINUTE + random.int(0, 180) * MINUTE;
  for (let asked = 0; asked < QUESTIONS_A_DAY; asked++) {
    const number = practising.number++;
    const made = nextTask({ course, recalls, at, seed: `demo/${learner.signIn}`, number, recent, seen });
    if (!made.ok) break;
    const { task } = made;
    const before = practised.get(task.skill) ?? 0;
    const answer = madeUpAnswer(learner, task.question, before, random);
    const secondsUsed = Math.round(task.secondsExpected * (0.6 + random.int(0, 90) / 100));
    at += (secondsUsed + random.int(5, 60)) * 1000;
    const help = { hint: random.chance(0.08), explanation: false };
    const judged = judge(
      task,
      { id: `demo-${id}-${number}`, learner: id, at, answer, help, secondsUsed },
      recalls,
    );
    recalls.set(task.skill, judged.recall);
    practised.set(task.skill, before + 1);
    seen.add(task.circuit);
    recent.push(task.skill);
    records.push(judged.record);
  }
  return records;
}

/** The days of the three weeks before `now`, each by its first moment on this machine's clock, the earliest first. */
export function daysBefore(now: number): readonly number[] {
  const today = new Date(now);
  return Array.from({ length: WEEKS * 7 }, (_, index) =>
    new Date(today.getFullYear(), today.getMonth(), today.getDate() - WEEKS * 7 + index).getTime(),
  );
}
