/** Buttons and contacts in the field: a contact is added to the device with each that is asked for. */
import type { ContactSpec, Device, Step } from '../../../shared/circuit.ts';
import { numbersAt } from '../../circuit/contact-numbers.ts';
import type { ActuatedPart, Toggle } from '../parts.ts';
import { hop, poleOf } from './coil-part.ts';
import type { DeviceShelf } from './shelf.ts';

/** Contacts that a button or a field contact may get beyond those its circuit needs. */
const MOST_CONTACTS = 3;

type Form = ContactSpec['form'];

export function actuated(
  shelf: DeviceShelf,
  name: string,
  make: (contacts: ContactSpec[]) => Device,
  toggle: (first: Form) => Toggle,
): ActuatedPart {
  const contacts: ContactSpec[] = [];
  const next = (form: Form): string[] => {
    const terminals = numbersAt(form, contacts.length + 1);
    contacts.push({ form, terminals });
    return terminals;
  };
  const plain = (form: Form) => (): Step => {
    const [from, to] = next(form);
    return hop(name, from!, to!);
  };
  shelf.add(() => (contacts.length > 0 ? make(contacts) : undefined));
  shelf.spares.push({
    by: 'outside',
    // What isn't on the drawing yet stays off it; the first contact is the one that acts go by.
    take: (form) => (contacts.length > 0 && contacts.length < MOST_CONTACTS ? plain(form)() : undefined),
  });
  return {
    name,
    made: plain('make'),
    rest: plain('break'),
    pole: () => poleOf(name, next('changeover') as [string, string, string]),
    get toggle() {
      return toggle(contacts[0]?.form ?? 'make');
    },
  };
}
