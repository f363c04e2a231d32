import { chooseItems, worthAsking } from '../../choosing.ts';
import type { Kind } from '../../kind.ts';
import { statesKind, yesAndNo } from '../../states-kind.ts';

/** Which lamps are lit? */
export const lampStates: Kind<'lamp-states'> = {
  ...statesKind('lamp-states', {
    task: ({ asked }) => ({ says: 'task', count: asked.length }),
    how: yesAndNo,
  }),
  suits: ({ lamps }) => worthAsking(lamps),
  counted: ({ asked }) => new Set(asked),
  propose(draft, random, solver) {
    const { circuit, scenario, family } = draft;
    const asked = chooseItems(draft, draft.lamps, random, solver);
    return asked && { kind: 'lamp-states', circuit, scenario, family, asked };
  },
};
