import type { FastifyInstance } from 'fastify';
import { courseOf } from '../../../practice/index.ts';
import type { Desk } from '../../homework/desk.ts';
import type { Service } from '../../service.ts';
import { addHomeworkFiles } from './files.ts';
import { addLearnersHomework } from './learner.ts';
import { addTutorsHomework } from './tutor.ts';

/** Homework, where people sign in. */
export function addHomework(app: FastifyInstance, service: Service): void {
  const course = courseOf(service.bank);
  if (!course.ok) throw new Error(course.problems.map(({ message }) => message).join(' '));
  const desk: Desk = { store: service.store, course: course.value, now: service.now, work: service.work };
  addLearnersHomework(app, service, desk);
  addTutorsHomework(app, service, desk);
  addHomeworkFiles(app, service, desk);
}
