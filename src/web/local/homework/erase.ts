/** The end of what this device keeps of somebody's homework; papers and marks on the server are not touched. */

import { words } from '../../words.ts';
import { KeptHomework } from './kept-homework.ts';
import { outboxOf } from './own-outbox.ts';

/** Sends what waits. Undefined when nothing is left; otherwise why it can't be erased yet, in words for a person. */
export async function homeworkLeft(person: string): Promise<string | undefined> {
  const outbox = await outboxOf(person);
  await outbox.flush();
  const { value: count } = outbox.waiting;
  return count === 0 ? undefined : words('first').homeworkTold.wouldBeLost(count);
}

export async function eraseHomework(person: string): Promise<void> {
  const kept = await KeptHomework.open();
  await kept.eraseOf(person);
  kept.close();
}
