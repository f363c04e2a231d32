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
    readonly idea: string;
    readonly advice: string;
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
  const ideas = new Map<string, { id: string; idea: string; advice: string; times: number }>();
  // An answer that several ideas explain speaks for none of them in particular.
  for (const { mark } of answers) {
    if (mark.misconceptions.length !== 1) continue;
    const [found] = mark.misconceptions;
    const before = ideas.get(found!.id);
    if (before) before.times++;
    else ideas.set(found!.id, { ...found!, times: 1 });
  }
  return {
    skills,
    ideas: [...ideas.values()].sort((one, other) => other.times - one.times),
    returns: forecast(course.graph, recalls).map((entry) => ({ ...entry, title: titleOf(entry.skill) })),
  };
}
