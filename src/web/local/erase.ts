import { me } from '../me.ts';
import { fetchWords, words } from '../words.ts';
import type { Local } from './database.ts';
import type { Fetch } from './sync.ts';

/**
 * Asks the server to erase everything it keeps about a learner. Undefined when it has; otherwise why it hasn't, in words
 * for a person.
 */
export async function eraseAtServer(fetch: Fetch, learner: string): Promise<string | undefined> {
  const response = await fetch(`/api/learner?confirm=${encodeURIComponent(learner)}`, {
    method: 'DELETE',
  }).catch(() => undefined);
  await fetchWords('progress');
  const { nothingErased } = words('progress');
  if (!response) return nothingErased.silent;
  const said: unknown = await response.json().catch(() => undefined);
  const { erased, apiProblem } = await import('../../../shared/api.ts');
  if (response.ok && erased.safeParse(said).success) return undefined;
  const problem = apiProblem.safeParse(said);
  return problem.success ? nothingErased.refused(problem.data) : nothingErased.another;
}

/** Removes everything about the learner from this device, all of it or nothing. The questions stay. */
export async function eraseDevice(local: Local): Promise<void> {
  await local.store.change(['answers', 'lines', 'waiting', 'values'], async (transaction) => {
    const bank = await transaction.objectStore('values').get('bank');
    for (const name of ['answers', 'lines', 'waiting', 'values'] as const)
      await transaction.objectStore(name).clear();
    if (bank !== undefined) await transaction.objectStore('values').put(bank, 'bank');
  });
  local.store.given.clear();
}

/** What the device keeps of homework, where there is any: fetched only then. */
const homework = () => (me.value.mode === 'class' ? import('./homework/erase.ts') : undefined);

/** Everything about a learner that is on this device. The store says that everything is to go: it is emptied last. */
export async function eraseHere(local: Local, learner: string): Promise<void> {
  await (await homework())?.eraseHomework(learner);
  await eraseDevice(local);
}

/**
 * Everything about a learner, on the server and then here. Undefined when it is gone; otherwise why nothing is, in words for a
 * person. From before the server is asked the device knows that all is to go.
 */
export async function eraseLearner(local: Local, fetch: Fetch, learner: string): Promise<string | undefined> {
  const left = await (await homework())?.homeworkLeft(learner);
  if (left !== undefined) return left;
  await local.setValue('erasing', true);
  const refused = await eraseAtServer(fetch, learner);
  if (refused === undefined) await eraseHere(local, learner);
  else await local.remove('erasing');
  return refused;
}
