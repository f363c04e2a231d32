/**
 * A drawing without the words beside its devices: designations alone, as many drawings have it. What was meant can't be guessed from
 * it, so what happens has to be followed along the conductors.
 */
import type { Circuit, Device } from '../../shared/circuit.ts';
import { traitsOf } from '../circuit/index.ts';

/** Share of fresh questions on such a drawing. */
export const UNLETTERED_SHARE = 0.45;

/** The colour of what is lit says as much as its words; that of a button is seen on its symbol's place alone. */
function plain(device: Device): Device {
  const { text: _, ...rest } = device;
  if ('points' in rest) return { ...rest, points: [] };
  if (!('colour' in rest) || traitsOf(device).verbs.length > 0) return rest as Device;
  const { colour: __, ...colourless } = rest;
  return colourless as Device;
}

/** Feeding devices keep their words: they say which supply they are of. */
const keepsWords = (device: Device): boolean => traitsOf(device).verbs.includes('open');

export const unlettered = (circuit: Circuit): Circuit => ({
  ...circuit,
  devices: circuit.devices.map((device) => (keepsWords(device) ? device : plain(device))),
});
