import type { ContactSpec } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { numbersAt } from '../../circuit/contact-numbers.ts';
import { hop } from './coil-part.ts';
import type { DeviceShelf } from './shelf.ts';

/** A selector with one make contact for each of the given sets of positions. */
export function addSelector(
  shelf: DeviceShelf,
  text: string,
  positions: readonly string[],
  makes: readonly (readonly string[])[],
) {
  const name = shelf.name('S');
  const contacts: ContactSpec[] = makes.map((closed, index) => ({
    form: 'make',
    terminals: numbersAt('make', index + 1),
    positions: [...closed],
  }));
  shelf.add({ kind: 'selector', name, text, positions: [...positions], contacts });
  return {
    name,
    hops: contacts.map(({ terminals }) => hop(name, terminals[0]!, terminals[1]!)),
    turn: (to: string): Act => ({ kind: 'turn', device: name, to }),
  };
}
