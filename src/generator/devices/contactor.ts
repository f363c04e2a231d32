import type { ContactSpec, Step } from '../../../shared/circuit.ts';
import { auxiliaryRow } from '../../circuit/contact-numbers.ts';
import type { ContactorPart, Source } from '../parts.ts';
import { heldBy, hop, mainHops } from './coil-part.ts';
import { type DeviceShelf, textOf } from './shelf.ts';

/** A contactor with a row of auxiliaries, EN 50005 numbers. */
export function addContactor(
  shelf: DeviceShelf,
  { rating }: Source,
  makes: number,
  breaks: number,
  { mains, text }: { readonly mains: number; readonly text?: string },
): ContactorPart {
  const name = shelf.name('K');
  const contacts = auxiliaryRow(makes, breaks);
  shelf.add({ kind: 'contactor', name, mains, contacts, rating, ...textOf(text) });
  const free = shelf.random.shuffle(contacts);
  const take = (form: ContactSpec['form']) => (): Step => {
    const at = free.findIndex((spec) => spec.form === form);
    if (at < 0) throw new RangeError(`${name} has no ${form} contact left`);
    const [spec] = free.splice(at, 1);
    return hop(name, spec!.terminals[0]!, spec!.terminals[1]!);
  };
  shelf.spares.push({
    by: 'coil',
    take: (form) => (free.some((spec) => spec.form === form) ? take(form)() : undefined),
  });
  return {
    name,
    coil: hop(name, 'A1', 'A2'),
    mains: mainHops(name, mains),
    made: take('make'),
    rest: take('break'),
    held: heldBy(name),
  };
}
