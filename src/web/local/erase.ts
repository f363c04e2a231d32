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
  if (!response)
    return 'Nothing was erased: the server cannot be reached. Erase again as soon as there is a network.';
  const said: unknown = await response.json().catch(() => undefined);
  const { erased, apiProblem } = await import('../../../shared/api.ts');
  if (response.ok && erased.safeParse(said).success) return undefined;
  const problem = apiProblem.safeParse(said);
  return problem.success
    ? `Nothing was erased: ${problem.data.message} ${problem.data.hint}`
    : 'Nothing was erased: what answered was not the server. Erase again on another network.';
}

/** Removes everything about the learner from this device, all of it or nothing. The questions stay. */
export async function eraseDevice(local: Local): Promise<void> {
  await local.store.change(['answers', 'lines', 'waiting', 'values'], async (transaction) => {
    const bank = await transaction.objectStore('values').get('bank');
    for (const name of ['answers', 'lines', 'waiting', 'values'] as const)
      await transaction.objectStore(name).clear();
    if (bank !== undefined) await transaction.objectStore('values').put(bank, 'bank');
  });
  local.given.clear();
}
