/** Every route there is, by name: what the server answers, its description names, and the test of roles walks. */
import { apiRoutes } from './api.ts';
import { homeworkRoutes } from './api-homework.ts';
import { peopleRoutes } from './api-people.ts';

export const everyRoute = { ...apiRoutes, ...peopleRoutes, ...homeworkRoutes } as const;
