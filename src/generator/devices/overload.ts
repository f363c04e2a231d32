import type { Step } from '../../../shared/circuit.ts';
import type { Toggle } from '../parts.ts';
import { hop, mainHops } from './coil-part.ts';
import type { DeviceShelf } from './shelf.ts';

interface OverloadPart {
  readonly name: string;
  readonly mains: readonly Step[];
  readonly rest: Step;
  readonly made: Step;
  readonly toggle: Toggle;
}

export function addOverload(shelf: DeviceShelf, text: string): OverloadPart {
  const name = shelf.name('F');
  shelf.add({ kind: 'overload', name, text });
  return {
    name,
    mains: mainHops(name, 3),
    rest: hop(name, '95', '96'),
    made: hop(name, '97', '98'),
    toggle: { on: { kind: 'trip', device: name }, off: { kind: 'reset', device: name }, springs: false },
  };
}
