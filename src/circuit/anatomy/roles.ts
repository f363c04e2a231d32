import type { LoadRole } from './types.ts';

/**
 * What is read off a load: whether a coil operates, a lamp lights, another load is on, what a controller's input reads; a
 * winding is one part of a load, which is read as a whole.
 */
export type ReadAs = 'coil' | 'lamp' | 'load' | 'input' | 'winding';

const READ_AS: Readonly<Record<LoadRole, ReadAs>> = {
  coil: 'coil',
  set: 'coil',
  reset: 'coil',
  lamp: 'lamp',
  sounder: 'load',
  valve: 'load',
  motor: 'winding',
  input: 'input',
};

export const readAs = (role: LoadRole): ReadAs => READ_AS[role];
