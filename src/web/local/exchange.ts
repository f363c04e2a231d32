/** What sending and fetching do with the device's store: fetched with them, after the first question. */
import type { AnswerLine, AnswerRecord } from '../../../shared/practice.ts';
import type { Local, ValueTypes } from './database.ts';
import { inOrder, leave } from './line.ts';

/** An answer in line for the server, with its place there. */
export interface InLine {
  readonly key: number;
  readonly answer: AnswerRecord;
}

/** Takes in lines that came from the server: what it says of an answer holds. */
export function takeLines(local: Local, lines: readonly AnswerLine[]): Promise<void> {
  return local.store.change(['lines'], async (transaction) => {
    await Promise.all(lines.map((line) => transaction.objectStore('lines').put(line)));
  });
}

/** Takes in answers that came from the server, whose lines are here. */
export function takeIn(local: Local, answers: readonly AnswerRecord[]): Promise<void> {
  return local.store.change(['answers'], async (transaction) => {
    await Promise.all(answers.map((answer) => transaction.objectStore('answers').put(answer)));
  });
}

/** The lowest number above `after` of an answer that is here in short only; undefined where there is none. */
export async function firstMissing(local: Local, after: number): Promise<number | undefined> {
  const [lines, ids] = await local.store.use((db) =>
    Promise.all([db.getAll('lines'), db.getAllKeys('answers')]),
  );
  const whole = new Set(ids);
  let first: number | undefined;
  for (const { id, number } of lines)
    if (number && number > after && !whole.has(id) && number < (first ?? Number.POSITIVE_INFINITY))
      first = number;
  return first;
}

/** The first answers in line. What waits and isn't there any more leaves the line, and is told. */
export async function inLine(local: Local, most: number): Promise<InLine[]> {
  const { found, gone } = await local.store.change(['answers', 'waiting'], async (transaction) => {
    const line = await inOrder(transaction.objectStore('waiting'), most);
    const answers = await Promise.all(
      line.map(({ value }) => transaction.objectStore('answers').get(value.id)),
    );
    const missing = line.filter((_, at) => !answers[at]);
    await leave(transaction.objectStore('waiting'), missing);
    const there = line.flatMap(({ key }, at) => (answers[at] ? [{ key, answer: answers[at] }] : []));
    return { found: there, gone: missing.length };
  });
  if (gone > 0) local.whenGone(gone);
  return found.length === 0 && gone > 0 ? inLine(local, most) : found;
}

/** Takes them out of the line. */
export async function arrived(local: Local, sent: readonly InLine[]): Promise<void> {
  await local.store.change(['waiting'], (transaction) => leave(transaction.objectStore('waiting'), sent));
  for (const { answer } of sent) local.store.given.delete(answer.id);
}

/**
 * Puts every answer that is here in line again: the server has another history than the one it was told. What is here in short
 * only belongs to the one that is gone, and nobody here could send it. Returns what is left in short, with no number.
 */
export function sendAllAgain(local: Local): Promise<readonly AnswerLine[]> {
  return local.store.change(['answers', 'lines', 'waiting'], async (transaction) => {
    const [waiting, short] = [transaction.objectStore('waiting'), transaction.objectStore('lines')];
    // Keys and lines only: all the answers of years at once would be more than a phone has room for.
    const [ids, all] = await Promise.all([
      transaction.objectStore('answers').index('by-time').getAllKeys(),
      short.index('by-time').getAll(),
    ]);
    const whole = new Set(ids);
    const lines = all.filter(({ id }) => whole.has(id)).map((line) => ({ ...line, number: null }));
    await Promise.all([waiting.clear(), short.clear()]);
    await Promise.all([...lines.map((line) => short.put(line)), ...ids.map((id) => waiting.add({ id }))]);
    return lines;
  });
}

const NOTHING = { history: null, last: 0, corrections: 0 };

/** Up to where answers are here in short. */
export const reached = async (local: Local): Promise<NonNullable<ValueTypes['lines']>> =>
  (await local.value('lines')) ?? NOTHING;

/** The history that this device goes by, and the highest number it was ever told of. */
export async function knownHistory(
  local: Local,
): Promise<{ readonly history: string | null; readonly told: number }> {
  const all = await Promise.all([local.value('lines'), local.value('fetched'), local.value('ahead')]);
  // Where none was fetched in short yet: from before answers were kept so, or how the learner stands is all that came.
  const history = all.find((one) => one && one.history !== null)?.history ?? null;
  return { history, told: Math.max(0, ...all.map((one) => (one?.history === history ? one.last : 0))) };
}

export const sameLines = (
  one: ValueTypes['lines'] = NOTHING,
  other: ValueTypes['lines'] = NOTHING,
): boolean =>
  one.history === other.history && one.last === other.last && one.corrections === other.corrections;

/** Says up to where answers are here in short, to the other tabs too. */
export async function reach(local: Local, lines: ValueTypes['lines']): Promise<void> {
  await local.setValue('lines', lines);
  local.told = lines;
}
