import type { Circuit } from '../../shared/circuit.ts';
import { anatomyOf, type Concern, loadId } from '../circuit/index.ts';

/**
 * What a finding about a load, or about what a coil moves, is placed by: the terminal at which a path comes to it.
 *
 * @param id - `-H1`, `-K3`, or a point of a controller, `-A2:Q1`
 */
export function whereFed({ devices }: Circuit, id: string): Concern {
  const [name] = id.split(':');
  const index = devices.findIndex((device) => device.name === name);
  const device = devices[index];
  if (!device) return { kind: 'circuit' };
  const { loads } = anatomyOf(device);
  const load = loads.find((each) => loadId(device.name, each) === id) ?? loads[0];
  return { kind: 'device', index, ...(load ? { terminal: load.from } : {}) };
}
