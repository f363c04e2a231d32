import type { Act } from '../../../../shared/scenario.ts';
import { anatomyOf, circuitView } from '../../../circuit/index.ts';
import { isolatingCautions } from '../../ask/cautions.ts';
import type { Kind } from '../../kind.ts';
import { certain } from '../../solving.ts';
import { statesKind, yesAndNo } from '../../states-kind.ts';
import { terminalsFor } from './terminals.ts';

/** Which terminals still are live with an isolator open or a breaker tripped? */
export const stillLive: Kind<'still-live'> = {
  ...statesKind('still-live', {
    task: () => ({ says: 'task' }),
    how: yesAndNo,
    cautions: ({ circuit }) => isolatingCautions(circuit),
  }),
  takesAway: true,
  propose({ circuit, scenario, family }, random, solver) {
    const feeds = circuit.devices.filter((device) =>
      anatomyOf(device).mechanisms.some(({ drive }) => drive === 'feed'),
    );
    // Not every one of them leaves live beside dead terminals that look alike.
    for (const { name } of random.shuffle(feeds)) {
      const open: Act = { kind: 'open', device: name };
      const last = scenario.acts.findLast((act) => 'device' in act && act.device === name);
      const asking = last?.kind === 'open' ? scenario : { ...scenario, acts: [...scenario.acts, open] };
      const standpoint = solver.solve(circuit, asking);
      const asked = standpoint && terminalsFor(standpoint, circuitView(circuit), name, random);
      if (!asked) continue;
      // Last, because it costs most.
      if (certain(solver.machine(circuit, asking), asking))
        return { kind: 'still-live', circuit, scenario: asking, family, asked };
    }
    return undefined;
  },
};
