import type { AnswerRecord } from '../../shared/practice.ts';
import { forecast, isHeld, type Recalls, type Return, recallOf } from '../memory/index.ts';
import type { Course } from './types.ts';

export interface SkillResult {
  readonly skill: string;
  readonly title: string;
  readonly asked: number;
  /** Answered without a mistake. */
  readonly right: number;
  readonly held: boolean;
}

/** What a practice came to: how each skill went, which wrong ideas showed, and what comes back when. */
export interface Summary {
  readonly skills: readonly SkillResult[];
  /** Wrong ideas by how often they showed, the commonest first. */
  readonly ideas: readonly {
    readonly id: string;
    readonly times: number;
  }[];
  readonly returns: readonly (Return & { readonly title: string })[];
}

/** Sums up the answers of one practice, with the recall states after it. */
export function summarise(
  course: Course,
  answers: readonly AnswerRecord[],
  recalls: Recalls,
  at: number,
): Summary {
  const titleOf = (skill: string): string => course.skills.get(skill)?.title ?? skill;
  const skills = [...new Set(answers.map(({ skill }) => skill))].map((skill): SkillResult => {
    const own = answers.filter((answer) => answer.skill === skill);
    return {
      skill,
      title: titleOf(skill),
      asked: own.length,
      right: own.filter(({ mark }) => mark.correct).length,
      held: isHeld(recallOf(recalls, skill), at),
    };
  });
  const times = new Map<string, number>();
  // An answer that several ideas explain speaks for none of them in particular.
  for (const { mark } of answers) {
    const [id, another] = mark.misconceptions;
    if (id !== undefined && another === undefined) times.set(id, (times.get(id) ?? 0) + 1);
  }
  return {
    skills,
    ideas: [...times]
      .map(([id, count]) => ({ id, times: count }))
      .sort((one, other) => other.times - one.times),
    returns: forecast(course.graph, recalls).map((entry) => ({ ...entry, title: titleOf(entry.skill) })),
  };
}
