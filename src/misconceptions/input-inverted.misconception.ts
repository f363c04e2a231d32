import { feedsOf } from './feeds.ts';
import { fieldDevices, withLoads } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const inputInverted: Misconception = {
  id: 'input-inverted',
  idea: 'You read a break field contact inverted, as if the controller turned its signal round.',
  advice:
    'The controller sees voltage or none. A break contact at rest is closed, so its input reads 1, and 0 when the contact is actuated; what that means is up to the program.',
  source: 'shown by published training texts and forums',
  changePlan: (plan, circuit) => {
    const field = fieldDevices(circuit);
    const feeds = feedsOf(plan);
    return withLoads(plan, (load, index) => {
      if (load.role !== 'input') return load;
      const broken = feeds.ofLoad(index).some((at) => {
        const { form, device } = plan.switches[at]!;
        return form === 'break' && field.has(device);
      });
      return broken ? { ...load, inverted: true } : load;
    });
  },
};
