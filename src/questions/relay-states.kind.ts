import { timerNote } from './ask/situation.ts';
import { chooseItems } from './choosing.ts';
import type { Kind } from './kind.ts';
import { howToList, statesKind } from './states-kind.ts';

/** Which relays have operated? */
export const relayStates: Kind<'relay-states'> = {
  ...statesKind('relay-states', {
    title: 'Relays',
    task: ({ circuit, asked }) =>
      `${asked.length > 1 ? 'How does each of these relays stand in the end?' : 'How does this relay stand in the end?'}${timerNote(circuit)}`,
    how: (question) => howToList(question, 'relay'),
  }),
  propose(draft, random) {
    const { circuit, scenario, family } = draft;
    const asked = chooseItems(draft, draft.relays, random);
    return asked && { kind: 'relay-states', circuit, scenario, family, asked };
  },
};
