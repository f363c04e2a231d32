/** Which answers proved a skill: those on the circuits that the competence matrix names. */
import type { ProofSource } from '../../../shared/issued.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import { gradeOf } from '../../memory/index.ts';
import type { Course } from '../../practice/index.ts';
import type { Competence, CompetenceMatrix } from '../reports/competence.ts';

/** One skill of one person, as the matrix has it. */
export interface SkillStanding {
  readonly id: string;
  readonly title: string;
  /** That the title is written in. */
  readonly language: string;
  readonly competence: Competence;
}

/** A person's row of the matrix; empty when the person isn't in it. */
export function standingsOf(
  course: Course,
  { skills, rows }: CompetenceMatrix,
  person: string,
): readonly SkillStanding[] {
  const row = rows.find((each) => each.person === person);
  if (!row) return [];
  return skills.map(({ id, title }, column) => {
    const { language } = course.skills.get(id)!;
    return { id, title, language, competence: row.cells[column]! };
  });
}

/** An answer that proves something, and where it comes from. */
export interface Proving {
  readonly record: AnswerRecord;
  readonly source: ProofSource;
}

export interface Proof {
  /** Fingerprint of the circuit. */
  readonly circuit: string;
  /** Undefined where it is not among the answers. */
  readonly answer: Proving | undefined;
}

const proves = ({ record: { attempt } }: Proving): boolean => {
  const { grade } = gradeOf(attempt);
  return grade === 'firm' || grade === 'sure';
};

/** For each circuit that a skill was proven on, the last answer that proved it there, up to the day it was proven. */
export function proofsOf({ id, competence }: SkillStanding, answers: readonly Proving[]): readonly Proof[] {
  if (competence.kind === 'not-yet') return [];
  const { provenOn, provenAt } = competence;
  const own = answers
    .filter((answer) => answer.record.skill === id && answer.record.at <= provenAt && proves(answer))
    .toSorted((one, other) => one.record.at - other.record.at);
  return provenOn.map((circuit) => ({
    circuit,
    answer: own.findLast((answer) => answer.record.circuit === circuit),
  }));
}
