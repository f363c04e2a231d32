import type { Misconception } from './types.ts';

export const normalIsRunning: Misconception = {
  id: 'normal-is-running',
  changeScenario: (scenario) => {
    // Only the plant's own contacts make and break; buttons are pressed, isolators opened.
    const acts = scenario.acts.filter(({ kind }) => kind !== 'make' && kind !== 'break');
    return acts.length === scenario.acts.length ? undefined : { ...scenario, acts };
  },
};
