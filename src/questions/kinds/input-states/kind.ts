import { chooseItems, worthAsking } from '../../choosing.ts';
import type { Kind } from '../../kind.ts';
import { statesKind, yesAndNo } from '../../states-kind.ts';

/** Which inputs read 1? */
export const inputStates: Kind<'input-states'> = {
  ...statesKind('input-states', {
    task: ({ asked }) => ({ says: 'task', count: asked.length }),
    how: yesAndNo,
  }),
  suits: ({ inputs }) => worthAsking(inputs),
  counted: ({ asked }) => new Set(asked),
  propose(draft, random, solver) {
    const { circuit, scenario, family } = draft;
    const asked = chooseItems(draft, draft.inputs, random, solver);
    return asked && { kind: 'input-states', circuit, scenario, family, asked };
  },
};
