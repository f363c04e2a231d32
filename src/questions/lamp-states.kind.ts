import { chooseItems } from './choosing.ts';
import type { Kind } from './kind.ts';
import { howToList, statesKind } from './states-kind.ts';

/** Which lamps are lit? */
export const lampStates: Kind<'lamp-states'> = {
  ...statesKind('lamp-states', {
    title: 'Lamps',
    task: ({ asked }) =>
      asked.length > 1 ? 'How does each of these stand in the end?' : 'How does it stand in the end?',
    how: (question) => howToList(question, 'lamp'),
  }),
  propose(draft, random) {
    const { circuit, scenario, family } = draft;
    const asked = chooseItems(draft, draft.lamps, random);
    return asked && { kind: 'lamp-states', circuit, scenario, family, asked };
  },
};
