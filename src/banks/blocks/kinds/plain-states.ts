/** Questions about the states of lamps, inputs, relays and terminals: `asked: -H1, -H2` and `answer: -H1 lit, -H2 dark`. */
import type { ItemKind } from '../../../questions/index.ts';
import type { AskedThing } from '../../../words/index.ts';
import { askableIn } from '../state-words.ts';
import { plainItem, readAskedStates } from './states.ts';
import type { KindReader } from './types.ts';

type PlainKind = 'lamp-states' | 'input-states' | 'relay-states' | 'still-live';

/** `what`: what an item has to be. */
const plainStates = (kind: PlainKind, items: readonly ItemKind[], what: AskedThing): KindReader => ({
  kind,
  keys: ['asked'],
  read(input) {
    const { base, report } = input;
    const read = readAskedStates(input, plainItem(askableIn(base.circuit, items), what, report));
    return (
      read && {
        question: { kind, ...base, asked: read.asked.map(({ item }) => item) },
        answer: { kind, states: read.states },
        answered: read.answered,
      }
    );
  },
});

export const plainStateReaders: readonly KindReader[] = [
  plainStates('lamp-states', ['lamp', 'load'], 'lamp'),
  plainStates('input-states', ['input'], 'input'),
  plainStates('relay-states', ['relay'], 'relay'),
  plainStates('still-live', ['terminal'], 'terminal'),
];
