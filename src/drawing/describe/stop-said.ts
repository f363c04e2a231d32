/** What a part is called where a path passes it, with the terminals at which it comes in and goes on. */
import type { Device } from '../../../shared/circuit.ts';
import type { DrawnDevice, PathPlace, StopSaid } from '../../words/index.ts';
import { closedPositions } from '../layout/references.ts';
import type { Rename } from '../letters.ts';
import type { Part } from '../parts/index.ts';
import { symbolOf } from '../symbols/registry.ts';

function deviceSaid(device: Device, rename: Rename): DrawnDevice {
  const { kind, name, text } = device;
  return {
    kind,
    name: rename(name),
    ...(text ? { text } : {}),
    ...('colour' in device && device.colour ? { colour: device.colour } : {}),
    ...('amps' in device && device.amps ? { amps: device.amps } : {}),
    ...('seconds' in device ? { seconds: device.seconds } : {}),
    ...('on' in device ? { on: device.on, off: device.off } : {}),
  };
}

interface Passing {
  readonly passed: readonly string[];
  /** The path with the coil that moves it. */
  readonly coil: PathPlace | undefined;
  /** The leg from which a changeover's path goes on. */
  readonly onFrom: string | undefined;
}

const COIL_SAID = { set: 'setCoil', reset: 'resetCoil', control: 'controlInput' } as const;

/** The part with the terminals at which a path comes in and goes on. */
export function stopSaid(part: Part, { passed, coil, onFrom }: Passing, rename: Rename): StopSaid {
  const { form, delay, text } = part;
  const [closed = '', operated = ''] = closedPositions(part);
  const device = deviceSaid(part.device, rename);
  const base = { device, through: passed, ...(coil ? { coil } : {}) };
  const late: { readonly late?: 'operating' | 'releasing' } =
    delay === 'operate' ? { late: 'operating' } : delay === 'release' ? { late: 'releasing' } : {};
  const { said } = symbolOf(form);
  switch (said) {
    case 'make':
    case 'break':
      return {
        says: said,
        ...base,
        ...late,
        ...(closed ? { positions: closed } : {}),
      };
    case 'changeover': {
      const [common = '', breakLeg = '', makeLeg = ''] = part.spots.map(({ terminal }) => terminal);
      return {
        says: said,
        device,
        ...(coil ? { coil } : {}),
        ...late,
        common,
        breakLeg,
        makeLeg,
        ...(closed ? { breakIn: closed, makeIn: operated } : {}),
        ...(onFrom === undefined ? {} : { onFrom }),
      };
    }
    case 'input':
    case 'output':
      return { says: said, ...base, ...(text ? { text } : {}) };
    case 'terminal':
      return { says: said, terminal: `${rename(part.device.name)}:${passed[0] ?? ''}` };
    case 'coil':
      return {
        says: part.winding ? COIL_SAID[part.winding] : said,
        ...base,
      };
    default:
      return { says: said, ...base };
  }
}
