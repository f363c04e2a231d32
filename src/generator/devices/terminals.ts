import type { DeviceOf } from '../../../shared/circuit.ts';

/** A row of terminals, which is put in when the rest is drawn. */
export const terminalRow = (name: string, count: number): DeviceOf<'terminals'> => ({
  kind: 'terminals',
  name,
  count,
});
