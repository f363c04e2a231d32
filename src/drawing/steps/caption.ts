/** What happened at one moment, as sentences. */
import type { Device } from '../../../shared/circuit.ts';
import type { Happening } from '../../../shared/solution.ts';
import type { Rename } from '../letters.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function renamed(id: string, rename: Rename): string {
  const colon = id.indexOf(':');
  return colon < 0 ? rename(id) : `${rename(id.slice(0, colon))}${id.slice(colon)}`;
}

/** `-H1 ("Fan healthy")`: a lamp's text helps where a relay's would only repeat itself. */
function named(id: string, devices: ReadonlyMap<string, Device>, rename: Rename): string {
  const device = devices.get(id);
  const name = renamed(id, rename);
  const shown =
    device?.kind === 'lamp' ||
    device?.kind === 'sounder' ||
    device?.kind === 'valve' ||
    device?.kind === 'motor';
  return shown && device.text ? `${name} ("${device.text}")` : name;
}

const moving = (device: Device | undefined): boolean =>
  device !== undefined &&
  'rating' in device &&
  device.kind !== 'lamp' &&
  device.kind !== 'sounder' &&
  device.kind !== 'valve';

function lampWords(to: string, kind: Device['kind'] | undefined): string {
  if (kind === 'lamp') return to === 'lit' ? 'lights' : to === 'dim' ? 'glows dimly' : 'goes dark';
  const [on, weak, off] =
    kind === 'sounder'
      ? ['sounds', 'sounds weakly', 'falls silent']
      : ['is on', 'has too little voltage', 'is off'];
  return (to === 'lit' ? on : to === 'dim' ? weak : off) as string;
}

function sentence(
  { what, device, to }: Happening,
  devices: ReadonlyMap<string, Device>,
  rename: Rename,
): string {
  const entry = devices.get(device);
  const name = named(device, devices, rename);
  switch (what) {
    case 'act':
      return `${capital(to)}.`;
    case 'energised':
      return `Coil ${name} is energised.`;
    case 'de-energised':
      return `Coil ${name} is de-energised.`;
    case 'leaves':
      if (!moving(entry)) return '';
      return to === 'rest'
        ? `${name} lets go: its make contacts open.`
        : `${name} picks up: its break contacts open.`;
    case 'arrives':
      if (!moving(entry)) return to === 'rest' ? `${name} is back at rest.` : `${name} is ${to}.`;
      return to === 'rest'
        ? `${name} has released: its break contacts close.`
        : `${name} has operated: its make contacts close.`;
    case 'lamp':
    case 'load':
      return `${named(device.split(':')[0] ?? '', devices, rename)} ${lampWords(to, devices.get(device.split(':')[0] ?? '')?.kind)}.`;
    case 'input':
      return `Input ${renamed(device, rename)} reads ${to}.`;
    case 'trips':
      return `${name} trips.`;
  }
}

export const captionOf = (
  happenings: readonly Happening[],
  devices: ReadonlyMap<string, Device>,
  rename: Rename,
): string =>
  [...new Set(happenings.map((happening) => sentence(happening, devices, rename)))].filter(Boolean).join(' ');
