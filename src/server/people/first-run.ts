import { createHash, timingSafeEqual } from 'node:crypto';
import { CODE_LETTERS, readTyped } from '../../../shared/people.ts';
import type { People } from '../../store/index.ts';

const LETTERS = 20;

/**
 * The key that makes the first administrator: it follows from the secret of the installation, so every server on the
 * store prints the same one. It is good for nothing as soon as there is an administrator.
 */
async function firstRunKey({ installation }: People): Promise<string> {
  const bytes = await installation.keyed('first-run', 'key');
  return Array.from({ length: LETTERS }, (_, at) => CODE_LETTERS[bytes[at]! % CODE_LETTERS.length]).join('');
}

/** The key as it is printed, while there is no administrator; null afterwards. */
export async function shownFirstRunKey(people: People): Promise<string | null> {
  if (await people.persons.hasAdmin()) return null;
  return (await firstRunKey(people)).match(/.{4}/g)!.join('-');
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/** Whether what was typed is the key, in time that doesn't tell how much of it was right. */
export const isFirstRunKey = async (people: People, typed: string): Promise<boolean> =>
  timingSafeEqual(digest(readTyped(typed)), digest(await firstRunKey(people)));
