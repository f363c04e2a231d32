import type { DeviceOf } from '../../../shared/circuit.ts';
import type { DeviceShelf } from './shelf.ts';

export function addMotor(
  shelf: DeviceShelf,
  text: string,
  volts: number,
  terminals: DeviceOf<'motor'>['terminals'],
): string {
  const name = shelf.name('M');
  shelf.add({ kind: 'motor', name, text, volts, terminals });
  return name;
}
