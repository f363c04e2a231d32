import type { FastifyInstance } from 'fastify';
import { apiRoutes } from '../../../shared/api.ts';
import { addRoute } from '../add-route.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';

/** Whether the server is alive, and whether it can do its work. */
export function addState(app: FastifyInstance, service: Service): void {
  const { store, version, isStopping } = service;
  addRoute(app, service, apiRoutes.health, () => ({ status: 'alive', version }));
  addRoute(app, service, apiRoutes.ready, async () => {
    if (isStopping())
      throw new ApiFailure('stopping', 'The server is being stopped.', 'Ask again when it has been started.');
    await store.ping();
    return { status: 'ready' };
  });
}
