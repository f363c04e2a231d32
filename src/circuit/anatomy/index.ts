/** What each device is made of. */
import type { Device, Supply } from '../../../shared/circuit.ts';
import { once } from '../../graph/index.ts';
import { traitsOf } from '../devices/registry.ts';
import type { Anatomy } from './types.ts';

export { isSecond, loadId, type ReadAs, readAs } from './roles.ts';
export type { Anatomy, Contact, Drive, Load, LoadRole, Mechanism } from './types.ts';

/** The anatomy of a device; worked out once for each device record, which never changes. */
export const anatomyOf = once((device: Device): Anatomy => traitsOf(device).anatomy(device));

/** Whether a coil moves its contacts. */
export const hasCoil = (device: Device): boolean =>
  anatomyOf(device).loads.some(({ mechanism }) => mechanism !== undefined);

/** The terminals of a supply: AC `L N`, DC `L+ L-`, three-phase `L1 L2 L3 N`. The return comes last. */
export function supplyTerminals(supply: Supply): readonly string[] {
  switch (supply.current) {
    case 'AC':
      return ['L', 'N'];
    case 'DC':
      return ['L+', 'L-'];
    case '3AC':
      return ['L1', 'L2', 'L3', 'N'];
  }
}
