import type { SetReport } from '../../../shared/homework-views.ts';
import type { Desk } from './desk.ts';

export type Named = SetReport['people'][number];

/** The learners of a class, by name. */
export async function learnersOf({ store }: Desk, classId: string): Promise<Named[]> {
  const members = await store.people.classes.members(classId);
  return members.flatMap(({ id, name, manner }) => (manner === 'learner' ? [{ id, name }] : []));
}
