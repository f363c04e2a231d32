import type { FastifyInstance } from 'fastify';
import type { Desk } from '../../homework/desk.ts';
import type { Service } from '../../service.ts';
import { addHomeworkFiles } from './files.ts';
import { addLearnersHomework } from './learner.ts';
import { addTutorsHomework } from './tutor.ts';

/** Homework, where people sign in. */
export function addHomework(app: FastifyInstance, service: Service): void {
  const { store, course, words, now, work } = service;
  const desk: Desk = { store, course, words, now, work };
  addLearnersHomework(app, service, desk);
  addTutorsHomework(app, service, desk);
  addHomeworkFiles(app, service, desk);
}
