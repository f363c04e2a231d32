import type { DeviceOf } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { switchingDevice } from '../anatomy/switching.ts';

type Field = DeviceOf<'field-contact' | 'limit-switch' | 'float-switch'>;

/** Contacts that the plant moves: of a process, at the end of a travel, at a level. */
export const fieldContact = {
  anatomy: (device: Field) =>
    switchingDevice({ name: device.name, positions: ['rest', 'actuated'], contacts: device.contacts }),
  verbs: ['make', 'break'],
  acts(device: Field): readonly Act[] {
    const made = { kind: 'make', device: device.name } as const;
    const broken = { kind: 'break', device: device.name } as const;
    return device.contacts[0]?.form === 'break' ? [broken, made] : [made, broken];
  },
  movedBy: 'plant',
  stands: ['notActuated', 'actuated'],
} as const;
