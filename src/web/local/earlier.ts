import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Local } from './database.ts';

/** Answers that are looked back on at most. */
const MOST = 20;

/** The latest answers that are kept on this device, in the order in which they were given. */
export const latestAnswers = (local: Local): Promise<AnswerRecord[]> =>
  local.store.use(async (db) => {
    const found: AnswerRecord[] = [];
    let cursor = await db.transaction('answers').store.index('by-time').openCursor(null, 'prev');
    while (cursor && found.length < MOST) {
      found.unshift(cursor.value);
      cursor = await cursor.continue();
    }
    return found;
  });
