import { speech } from '../speech.ts';
import { list, type YesAndNo } from './states.ts';

export const lampStates = {
  title: 'Lamps',
  /** In a list of kinds. */
  short: 'lamps',
  task: ({ count }: { count: number }): string =>
    speech.plural(count, {
      one: 'How does it stand in the end?',
      other: 'How does each of these stand in the end?',
    }),
  how: (states: YesAndNo): string => list('lamp', states),
};
