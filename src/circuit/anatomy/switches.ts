import type { ContactSpec, DeviceOf } from '../../../shared/circuit.ts';
import { SPEEDS } from '../standards.ts';
import { contactsOf, mainPoles, terminalsOf } from './contacts.ts';
import type { Anatomy, Drive } from './types.ts';

interface Build {
  readonly name: string;
  readonly drive?: Drive;
  readonly positions: readonly string[];
  readonly live?: number;
  readonly mains?: readonly ContactSpec[];
  readonly contacts?: readonly ContactSpec[];
  readonly protects?: boolean;
  readonly amps?: number | undefined;
}

function build(parts: Build): Anatomy {
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

export const buttonAnatomy = ({ name, contacts }: DeviceOf<'push-button' | 'emergency-stop'>): Anatomy =>
  build({ name, positions: ['rest', 'pressed'], contacts });

export const fieldAnatomy = ({
  name,
  contacts,
}: DeviceOf<'field-contact' | 'limit-switch' | 'float-switch'>): Anatomy =>
  build({ name, positions: ['rest', 'actuated'], contacts });

export const selectorAnatomy = ({ name, positions, contacts }: DeviceOf<'selector'>): Anatomy =>
  build({ name, positions, contacts });

export const overloadAnatomy = ({ name }: DeviceOf<'overload'>): Anatomy => {
  const mains = build({
    name,
    positions: ['reset', 'tripped'],
    mains: mainPoles(3),
    contacts: [
      { form: 'break', terminals: ['95', '96'] },
      { form: 'make', terminals: ['97', '98'] },
    ],
  });
  // A thermal overload's own main poles never open: its 95-96 stops the contactor (common practice, no source).
  return {
    ...mains,
    contacts: mains.contacts.map((contact) => (contact.main ? { ...contact, closedIn: [0, 1] } : contact)),
  };
};

/** A fuse is drawn whole; position 1 is blown or taken out. */
export const fuseAnatomy = ({ name, poles, amps }: DeviceOf<'fuse'>): Anatomy =>
  build({
    name,
    drive: 'feed',
    positions: ['in', 'blown'],
    mains: mainPoles(poles, 'break'),
    protects: true,
    amps,
  });

/** Drawn open, closed in service. */
export const breakerAnatomy = ({ name, poles, amps }: DeviceOf<'breaker'>): Anatomy =>
  build({
    name,
    drive: 'feed',
    positions: ['open', 'closed'],
    live: 1,
    mains: mainPoles(poles),
    protects: true,
    amps,
  });

export const isolatorAnatomy = ({ name, poles }: DeviceOf<'isolator'>): Anatomy =>
  build({ name, drive: 'feed', positions: ['open', 'closed'], live: 1, mains: mainPoles(poles) });
