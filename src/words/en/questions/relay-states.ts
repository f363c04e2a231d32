import { speech } from '../speech.ts';
import { list, TIMER, type YesAndNo } from './states.ts';

export const relayStates = {
  title: 'Relays',
  /** In a list of kinds. */
  short: 'relays operated',
  task: ({ count, timers }: { count: number; timers: boolean }): string => {
    const asked = speech.plural(count, {
      one: 'How does this relay stand in the end?',
      other: 'How does each of these relays stand in the end?',
    });
    return timers ? `${asked} ${TIMER}` : asked;
  },
  how: (states: YesAndNo): string => list('relay', states),
};
