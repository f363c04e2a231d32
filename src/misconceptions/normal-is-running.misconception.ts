import type { Misconception } from './types.ts';

export const normalIsRunning: Misconception = {
  id: 'normal-is-running',
  idea: 'You left the field contacts as drawn, as if "normal" meant the plant running as it should.',
  advice:
    'A contact is drawn unactuated: no pressure, no flow, nothing in its way. Ask what the plant does to the contact, move it, and only then follow the current.',
  source: 'shown by published training texts and forums',
  changeScenario: (scenario) => {
    // Only the plant's own contacts make and break; buttons are pressed, isolators opened.
    const acts = scenario.acts.filter(({ kind }) => kind !== 'make' && kind !== 'break');
    return acts.length === scenario.acts.length ? undefined : { ...scenario, acts };
  },
};
