import type { DeviceOf } from '../../../shared/circuit.ts';
import type { InputsPart, Source } from '../parts.ts';
import type { DeviceShelf } from './shelf.ts';

/** Inputs of a controller; the module grows with the points that are asked of it. */
export function addInputs(shelf: DeviceShelf, source: Source, type: DeviceOf<'inputs'>['type']): InputsPart {
  const name = shelf.name('A');
  const points: string[] = [];
  const spare = shelf.random.int(0, 2);
  shelf.add(() => ({
    kind: 'inputs',
    name,
    text: 'Controller inputs',
    type,
    count: Math.min(16, points.length + spare),
    points,
  }));
  const part: InputsPart = {
    source,
    points: () => points.length,
    next: (text) => {
      points.push(text);
      const point = { device: name, enter: `I${points.length}` };
      // The first point leads on to the module's common and so to the return; the others share that.
      return points.length === 1 ? { ...point, leave: 'COM' } : point;
    },
  };
  shelf.inputs.push(part);
  return part;
}
