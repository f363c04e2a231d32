import { list, type YesAndNo } from './states.ts';

export const stillLive = {
  title: 'Still live',
  /** In a list of kinds. */
  short: 'what stays live',
  task: 'Which of these terminals still are live? Live means: a meter between the terminal and the return of its own supply (N or L-) shows a voltage. What nothing joins to a supply counts as dead here.',
  how: (states: YesAndNo): string => list('terminal', states),
};
