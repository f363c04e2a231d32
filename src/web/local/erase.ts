import { words } from '../words.ts';
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
