/** What is moved by an act, or by itself on a short circuit. */
import type { ContactSpec } from '../../../shared/circuit.ts';
import { SPEEDS } from '../standards.ts';
import { contactsOf, terminalsOf } from './contacts.ts';
import type { Anatomy, Drive } from './types.ts';

interface SwitchingDevice {
  readonly name: string;
  readonly drive?: Drive;
  readonly positions: readonly string[];
  readonly live?: number;
  readonly mains?: readonly ContactSpec[];
  readonly contacts?: readonly ContactSpec[];
  readonly protects?: boolean;
  readonly amps?: number | undefined;
}

export function switchingDevice(parts: SwitchingDevice): Anatomy {
  const {
    name,
    drive = 'act',
    positions,
    live = 0,
    mains = [],
    contacts = [],
    protects = false,
    amps,
  } = parts;
  const placed = (specs: readonly ContactSpec[], main: boolean, after: number) =>
    specs.flatMap((spec, index) =>
      contactsOf(spec, { mechanism: 0, pole: after + index + 1, main, positions }),
    );
  return {
    terminals: [...terminalsOf(mains), ...terminalsOf(contacts)],
    mechanisms: [
      {
        id: name,
        drive,
        positions,
        live,
        speeds: SPEEDS.hand,
        delays: [],
        protects,
        ...(amps ? { amps } : {}),
      },
    ],
    contacts: [...placed(mains, true, 0), ...placed(contacts, false, mains.length)],
    loads: [],
  };
}
