/** The list of classes, and a new one. */

import { speech } from '../../speech.ts';
import { moments } from '../moments.ts';

export const list = {
  forTutors: 'This is for tutors. <account>Your own classes stand on your account.</account>',
  classes: 'Classes',
  newClass: 'New class',
  people: 'People',
  class: 'Class',
  intake: 'Intake',
  learners: 'Learners',
  since: 'Since',
  /** Until when a class went on, where it has ended. */
  from: (at: number) => moments.day(at),
  fromTo: ({ from, to }: { from: number; to: number }) => `${moments.day(from)} to ${moments.day(to)}`,
  noIntake: '–',
  none: 'No class yet. A new class has a joining code: print slips with it, and learners join by themselves.',
  ended: (count: number) => speech.plural(count, { one: '1 class ended', other: `${count} classes ended` }),
  endedOnes: 'Classes that have ended',
  make: 'Make the class',
  back: 'Back',
};
