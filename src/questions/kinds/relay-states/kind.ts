import { hasTimers } from '../../ask/situation.ts';
import { chooseItems, worthAsking } from '../../choosing.ts';
import type { Kind } from '../../kind.ts';
import { statesKind, yesAndNo } from '../../states-kind.ts';

/** Which relays have operated? */
export const relayStates: Kind<'relay-states'> = {
  ...statesKind('relay-states', {
    task: ({ circuit, asked }) => ({
      says: 'task',
      count: asked.length,
      timers: hasTimers(circuit),
    }),
    how: yesAndNo,
  }),
  suits: ({ relays }) => worthAsking(relays),
  counted: ({ asked }) => new Set(asked),
  propose(draft, random, solver) {
    const { circuit, scenario, family } = draft;
    const asked = chooseItems(draft, draft.relays, random, solver);
    return asked && { kind: 'relay-states', circuit, scenario, family, asked };
  },
};
