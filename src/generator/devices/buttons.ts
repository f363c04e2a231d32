import type { ActuatedPart } from '../parts.ts';
import type { Purpose } from '../vocabulary/index.ts';
import { actuated } from './actuated.ts';
import type { DeviceShelf } from './shelf.ts';

export function addButton(shelf: DeviceShelf, text: string, purpose: Purpose): ActuatedPart {
  const name = shelf.name('S');
  const colour = shelf.buttonColour(purpose);
  return actuated(
    shelf,
    name,
    (contacts) => ({ kind: 'push-button', name, text, colour, contacts }),
    () => ({ on: { kind: 'press', device: name }, off: { kind: 'release', device: name }, springs: true }),
  );
}

export function addEmergencyStop(shelf: DeviceShelf, text: string): ActuatedPart {
  const name = shelf.name('S');
  return actuated(
    shelf,
    name,
    (contacts) => ({ kind: 'emergency-stop', name, text, contacts }),
    () => ({ on: { kind: 'press', device: name }, off: { kind: 'release', device: name }, springs: false }),
  );
}
