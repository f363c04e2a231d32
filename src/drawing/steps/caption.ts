/** What happened at one moment, as statements. */
import type { Circuit, Device } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import type { Happening } from '../../../shared/solution.ts';
import { actSaid, anatomyOf, hasCoil, type LoadRole, readAs } from '../../circuit/index.ts';
import { type CaptionSaid, type Named, say, type Words } from '../../words/index.ts';
import type { Rename } from '../letters.ts';

function renamed(id: string, rename: Rename): string {
  const colon = id.indexOf(':');
  return colon < 0 ? rename(id) : `${rename(id.slice(0, colon))}${id.slice(colon)}`;
}

/** A lamp's text helps where a relay's would only repeat itself. */
function named(id: string, devices: ReadonlyMap<string, Device>, rename: Rename): Named {
  const device = devices.get(id);
  const name = renamed(id, rename);
  return device?.text && anatomyOf(device).loads.length > 0 && !hasCoil(device)
    ? { name, text: device.text }
    : { name };
}

const moving = (device: Device | undefined): boolean => device !== undefined && hasCoil(device);

/** What a load does with its voltage, with too little of it, without. */
const OTHER = ['isOn', 'isWeak', 'isOff'] as const;
const BY_ROLE: Readonly<
  Partial<
    Record<
      LoadRole,
      readonly ['lights' | 'sounds', 'glowsDimly' | 'soundsWeakly', 'goesDark' | 'fallsSilent']
    >
  >
> = {
  lamp: ['lights', 'glowsDimly', 'goesDark'],
  sounder: ['sounds', 'soundsWeakly', 'fallsSilent'],
};

function loadSaid(load: Named, to: string, role: LoadRole | undefined): CaptionSaid {
  const [on, weak, off] = (role && BY_ROLE[role]) ?? OTHER;
  return { says: to === 'lit' ? on : to === 'dim' ? weak : off, ...load };
}

/** The load of a device that is a lamp, or the one that is none. */
const roleOf = (device: Device | undefined, what: 'lamp' | 'load'): LoadRole | undefined =>
  device && anatomyOf(device).loads.find(({ role }) => (readAs(role) === 'lamp') === (what === 'lamp'))?.role;

export interface Scene {
  readonly circuit: Circuit;
  readonly devices: ReadonlyMap<string, Device>;
  readonly acts: readonly Act[];
  readonly rename: Rename;
}

function happened(
  { act, what, device, to }: Happening,
  { circuit, devices, acts, rename }: Scene,
): CaptionSaid | undefined {
  const entry = devices.get(device);
  const part = named(device, devices, rename);
  switch (what) {
    case 'act':
      return { says: 'act', act: actSaid(acts[act]!, circuit) };
    case 'energised':
      return { says: 'energised', ...part };
    case 'de-energised':
      return { says: 'deEnergised', ...part };
    case 'leaves':
      return moving(entry) ? { says: to === 'rest' ? 'letsGo' : 'picksUp', ...part } : undefined;
    case 'arrives':
      if (moving(entry)) return { says: to === 'rest' ? 'hasReleased' : 'hasOperated', ...part };
      return to === 'rest' ? { says: 'backAtRest', ...part } : { says: 'standsAt', ...part, at: to };
    case 'lamp':
    case 'load': {
      const [owner = ''] = device.split(':');
      return loadSaid(named(owner, devices, rename), to, roleOf(devices.get(owner), what));
    }
    case 'input':
      return { says: 'inputReads', input: renamed(device, rename), reads: to };
    case 'trips':
      return { says: 'trips', ...part };
  }
}

/** What happened, each thing once. */
export const captionOf = (happenings: readonly Happening[], scene: Scene): readonly CaptionSaid[] => {
  const said = happenings.flatMap((happening) => happened(happening, scene) ?? []);
  return [...new Map(said.map((each) => [JSON.stringify(each), each])).values()];
};

/** The same in words. */
export const tellCaption = ({ drawing }: Pick<Words, 'drawing'>, caption: readonly CaptionSaid[]): string =>
  caption.map((each) => say(drawing.captions, each)).join(' ');
