import { speech } from '../speech.ts';
import { list, type YesAndNo } from './states.ts';

export const inputStates = {
  title: 'Controller inputs',
  /** In a list of kinds. */
  short: 'controller inputs',
  task: ({ count }: { count: number }): string =>
    speech.plural(count, {
      one: 'What does this input read in the end?',
      other: 'What does each of these inputs read in the end?',
    }),
  how: (states: YesAndNo): string => list('input', states),
};
