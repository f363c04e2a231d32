/** What happened at one moment, as statements. */
import type { Circuit, Device } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import type { Happening } from '../../../shared/solution.ts';
import { actSaid } from '../../circuit/index.ts';
import { type CaptionSaid, type Named, say, type Words } from '../../words/index.ts';
import type { Rename } from '../letters.ts';

function renamed(id: string, rename: Rename): string {
  const colon = id.indexOf(':');
  return colon < 0 ? rename(id) : `${rename(id.slice(0, colon))}${id.slice(colon)}`;
}

const LOADS: ReadonlySet<Device['kind']> = new Set(['lamp', 'sounder', 'valve', 'motor']);

/** A lamp's text helps where a relay's would only repeat itself. */
function named(id: string, devices: ReadonlyMap<string, Device>, rename: Rename): Named {
  const device = devices.get(id);
  const name = renamed(id, rename);
  return device?.text && LOADS.has(device.kind) ? { name, text: device.text } : { name };
}

const moving = (device: Device | undefined): boolean =>
  device !== undefined &&
  'rating' in device &&
  device.kind !== 'lamp' &&
  device.kind !== 'sounder' &&
  device.kind !== 'valve';

/** By kind of load: with its voltage, with too little of it, without. */
const LAMP = ['lights', 'glowsDimly', 'goesDark'] as const;
const SOUNDER = ['sounds', 'soundsWeakly', 'fallsSilent'] as const;
const OTHER = ['isOn', 'isWeak', 'isOff'] as const;

function loadSaid(load: Named, to: string, kind: Device['kind'] | undefined): CaptionSaid {
  const [on, weak, off] = kind === 'lamp' ? LAMP : kind === 'sounder' ? SOUNDER : OTHER;
  return { says: to === 'lit' ? on : to === 'dim' ? weak : off, ...load };
}

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
      return loadSaid(named(owner, devices, rename), to, devices.get(owner)?.kind);
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
