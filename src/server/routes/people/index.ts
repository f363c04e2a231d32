/** The routes of people and classes. */
import type { FastifyInstance } from 'fastify';
import type { Service } from '../../service.ts';
import { addClasses } from './classes.ts';
import { addEntering } from './entering.ts';
import { addJoining } from './joining.ts';
import { addOwn } from './own.ts';
import { addPersons } from './persons.ts';
import { addRoster } from './roster.ts';
import { addSlips } from './slips.ts';

export function addPeople(app: FastifyInstance, service: Service): void {
  addEntering(app, service);
  addJoining(app, service);
  addOwn(app, service);
  addClasses(app, service);
  addPersons(app, service);
  addRoster(app, service);
  addSlips(app, service);
}
