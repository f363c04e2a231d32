import { traitsOf } from '../circuit/index.ts';
import type { PlanSwitch } from '../solver/index.ts';
import { feedsOf } from './feeds.ts';
import { coilsByMechanism, namesOf } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const sealWhereNone: Misconception = {
  id: 'seal-where-none',
  changePlan: (plan, circuit) => {
    const buttons = namesOf(circuit, (device) => traitsOf(device).momentary === true);
    const feeds = feedsOf(plan);
    const added: PlanSwitch[] = [];
    for (const [mechanism, coils] of coilsByMechanism(plan)) {
      const { device, drive } = plan.mechanisms[mechanism]!;
      if (drive !== 'coil') continue;
      const feeding = coils.flatMap((coil) => feeds.ofLoad(coil)).map((index) => plan.switches[index]!);
      if (feeding.some((contact) => contact.mechanism === mechanism && contact.form === 'make')) continue;
      for (const button of feeding) {
        if (button.form !== 'make' || !buttons.has(button.device)) continue;
        added.push({ ...button, device, mechanism, closedIn: [1] });
      }
    }
    return added.length === 0 ? undefined : { ...plan, switches: [...plan.switches, ...added] };
  },
};
