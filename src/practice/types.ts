import type { Bank, BankSkill } from '../../shared/bank.ts';
import type { Question } from '../../shared/question.ts';
import type { Choice, SkillGraph } from '../memory/index.ts';

/** A bank made ready for practising: its skill graph checked, its skills and questions found by name. */
export interface Course {
  readonly bank: Bank;
  readonly graph: SkillGraph;
  readonly skills: ReadonlyMap<string, CourseSkill>;
}

/** A skill, and in which language its title and its questions are written. */
export interface CourseSkill extends BankSkill {
  readonly language: string;
}

/** One question to be put to a learner. */
export interface Task {
  readonly skill: string;
  /** Why this skill, now. */
  readonly why: Exclude<Choice['kind'], 'none'>;
  readonly question: Question;
  /** The same text for the same circuit however its devices are named. */
  readonly circuit: string;
  readonly secondsExpected: number;
  /** Which issued question it is; an answer to any other proves nothing. */
  readonly issued?: string;
  /** What the author says after the answer, when it is a question somebody wrote. */
  readonly because?: string;
}
