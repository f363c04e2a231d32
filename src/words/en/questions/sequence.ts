import { TIMER } from './states.ts';

export const sequence = {
  title: 'Step by step',
  /** In a list of kinds. */
  short: 'sequence',
  task: ({ timers }: { timers: boolean }): string => {
    const asked = 'How do these stand, each after the acts so far?';
    return timers ? `${asked} ${TIMER}` : asked;
  },
  how: 'Write it step by step: after 1: H1 …, H2 …; after 2: H1 … (0 is the start). Or write all the states in the order of the list.',
};
