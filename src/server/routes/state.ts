import { setTimeout } from 'node:timers/promises';
import type { FastifyInstance } from 'fastify';
import { apiRoutes } from '../../../shared/api.ts';
import { addRoute } from '../add-route.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';

/** Milliseconds within which the database has to answer for the server to be ready: who asks has a patience of its own. */
const SOON = 2_000;

/** Whether the server is alive, and whether it can do its work. */
export function addState(app: FastifyInstance, service: Service): void {
  const { store, version, isStopping } = service;
  let asked: Promise<void> | null = null;
  // One question at a time, however often this is asked: a database that hangs has enough to do.
  const ping = (): Promise<void> => {
    asked ??= store.ping().finally(() => {
      asked = null;
    });
    return asked;
  };
  const answersSoon = async (): Promise<void> => {
    const enough = new AbortController();
    const late = setTimeout(SOON, undefined, { signal: enough.signal }).then(() => {
      throw new ApiFailure({ says: 'store-unavailable.late', seconds: SOON / 1000 });
    });
    // Which of the two loses isn't asked any more.
    late.catch(() => undefined);
    const answered = ping();
    answered.catch(() => undefined);
    try {
      await Promise.race([answered, late]);
    } finally {
      enough.abort();
    }
  };
  addRoute(app, service, apiRoutes.health, () => ({ status: 'alive', version }));
  addRoute(app, service, apiRoutes.ready, async () => {
    if (isStopping()) throw new ApiFailure({ says: 'stopping.notReady' });
    await answersSoon();
    return { status: 'ready' };
  });
}
