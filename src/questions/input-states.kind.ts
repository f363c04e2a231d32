import { chooseItems } from './choosing.ts';
import type { Kind } from './kind.ts';
import { howToList, statesKind } from './states-kind.ts';

/** Which inputs read 1? */
export const inputStates: Kind<'input-states'> = {
  ...statesKind('input-states', {
    title: 'Controller inputs',
    task: ({ asked }) =>
      asked.length > 1
        ? 'What does each of these inputs read in the end?'
        : 'What does this input read in the end?',
    how: (question) => howToList(question, 'input'),
  }),
  propose(draft, random) {
    const { circuit, scenario, family } = draft;
    const asked = chooseItems(draft, draft.inputs, random);
    return asked && { kind: 'input-states', circuit, scenario, family, asked };
  },
};
