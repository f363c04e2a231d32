import { feedsOf } from './feeds.ts';
import { fieldDevices, withLoads } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const inputInverted: Misconception = {
  id: 'input-inverted',
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
