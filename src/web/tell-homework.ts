/** Tells a learner who hasn't looked there that homework is open. */
import type { LearnerSet } from '../../shared/homework-views.ts';
import { call } from './api.ts';
import { openHomework } from './open-homework.ts';
import { words } from './words.ts';

/** Open sets that are not handed in, the most urgent first. */
export const toDo = (sets: readonly LearnerSet[]): readonly LearnerSet[] =>
  sets.filter(
    ({ state, attempts }) =>
      state === 'open' && (attempts.length === 0 || attempts.some(({ submittedAt }) => submittedAt === null)),
  );

export function openText(sets: readonly LearnerSet[]): string {
  const [first, ...others] = toDo(sets);
  if (!first) return '';
  return words('first').homeworkTold.open({
    title: first.title,
    closesAt: first.closesAt,
    more: others.length,
  });
}

export async function tellOpen(): Promise<void> {
  const { sets } = await call('myHomework');
  openHomework.value = openText(sets);
}
