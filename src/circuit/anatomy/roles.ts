import type { Load, LoadRole } from './types.ts';

/**
 * What is read off a load: whether a coil operates, a lamp lights, another load is on, what a controller's input reads; a
 * winding is one part of a load, which is read as a whole.
 */
export type ReadAs = 'coil' | 'lamp' | 'load' | 'input' | 'winding';

const READ_AS: Readonly<Record<LoadRole, ReadAs>> = {
  coil: 'coil',
  set: 'coil',
  reset: 'coil',
  control: 'coil',
  supply: 'coil',
  lamp: 'lamp',
  sounder: 'load',
  valve: 'load',
  motor: 'winding',
  input: 'input',
};

/** The second of two that move one mechanism: it goes by its own terminal. */
export const isSecond = (role: LoadRole | 'dirt'): boolean => role === 'reset' || role === 'supply';

export const readAs = (role: LoadRole): ReadAs => READ_AS[role];

/**
 * The name of a load in what is read off a circuit: `-K3`, `-H1`, `-A1:I1`. A device's second coil goes by its own terminal, `-K7:B1`,
 * and so do a timer's own supply, `-K5:A1`, and each winding, `-M1:U1`.
 */
export function loadId(device: string, { role, point, from }: Load): string {
  if (role === 'input') return `${device}:${point}`;
  return isSecond(role) || readAs(role) === 'winding' ? `${device}:${from}` : device;
}
