/** The contract as the page needs it at work: fetched with the first call, so that practising doesn't wait for it. */
import { apiRoutes } from '../../shared/api.ts';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import { peopleRoutes } from '../../shared/api-people.ts';

export { readLoosely } from './loosely.ts';

export const routes = { ...apiRoutes, ...peopleRoutes, ...homeworkRoutes } as const;
