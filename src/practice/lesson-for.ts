/** The part of a lesson that helps where a skill keeps going wrong. */
import type { Bank, LessonSection, Topic } from '../../shared/bank.ts';

export interface LessonFor {
  readonly topic: Topic;
  readonly section: LessonSection;
}

const hasText = ({ parts }: LessonSection): boolean => parts.some(({ kind }) => kind === 'text');

/** The section that the skill names; the first with text where it names none. Undefined for a lesson without any. */
export function lessonFor({ topics }: Bank, skill: string): LessonFor | undefined {
  for (const topic of topics) {
    const own = topic.skills.find(({ id }) => id === skill);
    if (!own) continue;
    const section =
      topic.lesson.find((each) => each.title !== null && each.title === own.lesson && hasText(each)) ??
      topic.lesson.find(hasText);
    return section && { topic, section };
  }
  return undefined;
}
