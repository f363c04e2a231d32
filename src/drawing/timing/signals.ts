/** What changes in a scenario, as lines over time. */
import type { Circuit, Device } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Happening } from '../../../shared/solution.ts';
import { actSaid, anatomyOf, hasCoil } from '../../circuit/index.ts';
import { machineOf, planOf, runTimed } from '../../solver/index.ts';
import type { ActSaid, Words } from '../../words/index.ts';
import { plainLetters, type Rename } from '../letters.ts';

/** 0 low, 1 high; a half is dim, undefined, or on the way between two positions. */
export type Level = 0 | 0.5 | 1;

export interface Change {
  readonly ms: number;
  readonly level: Level;
}

export interface Signal {
  readonly id: string;
  readonly name: string;
  /** Which part of the device the line is of, where there are several. */
  readonly of?: 'coil' | 'contacts';
  /** The first is where it begins. */
  readonly changes: readonly Change[];
}

export interface ActAt {
  readonly ms: number;
  readonly act: ActSaid;
}

export interface Signals {
  readonly signals: readonly Signal[];
  readonly acts: readonly ActAt[];
  /** End of the scenario. */
  readonly end: number;
}

interface SignalChange extends Pick<Signal, 'id' | 'name' | 'of'> {
  readonly level: Level;
  /** Order of the rows: hands and plant, coils and contacts, loads. */
  readonly rank: number;
}

const lampLevel = (to: string): Level => (to === 'lit' ? 1 : to === 'dark' || to === 'off' ? 0 : 0.5);

function told(
  { what, device, to }: Happening,
  devices: ReadonlyMap<string, Device>,
  rename: Rename,
): SignalChange[] {
  const [owner = '', point] = device.split(':');
  const entry = devices.get(owner);
  const name = `${rename(owner)}${point ? `:${point}` : ''}`;
  switch (what) {
    case 'energised':
    case 'de-energised':
      return [{ id: `${device} coil`, name, of: 'coil', level: what === 'energised' ? 1 : 0, rank: 1 }];
    case 'leaves':
    case 'arrives': {
      const coil = entry !== undefined && hasCoil(entry);
      const level: Level = what === 'leaves' ? 0.5 : isHigh(entry, to) ? 1 : 0;
      return [
        { id: `${device} contacts`, name, ...(coil ? { of: 'contacts' } : {}), level, rank: coil ? 1 : 0 },
      ];
    }
    case 'lamp':
    case 'load':
      return [{ id: owner, name: rename(owner), level: lampLevel(to), rank: 2 }];
    case 'input':
      return [{ id: device, name, level: to === '1' ? 1 : to === '0' ? 0 : 0.5, rank: 2 }];
    case 'trips':
      return [{ id: `${device} contacts`, name, level: 0, rank: 0 }];
    case 'act':
      return [];
  }
}

/** Whether a feeding device is closed in that position, and any other has left the position it is drawn in. */
function isHigh(device: Device | undefined, to: string): boolean {
  if (!device) return false;
  const { mechanisms, contacts } = anatomyOf(device);
  const { drive, positions } = mechanisms[0]!;
  const at = positions.indexOf(to);
  return drive === 'feed' ? contacts[0]!.closedIn.includes(at) : at !== 0;
}

const isFeeding = (device: Device | undefined): boolean =>
  device !== undefined && anatomyOf(device).mechanisms.some(({ drive }) => drive === 'feed');

/**
 * Runs the scenario in time and keeps every device that changes. What holds before the first act is where its line
 * begins; breakers and isolators begin closed in a live start.
 */
export function signalsOf(circuit: Circuit, scenario: Scenario, rename: Rename = plainLetters): Signals {
  const machine = machineOf(planOf(circuit, scenario.faults));
  const { happenings, state } = runTimed(machine, scenario, () => '');
  const devices = new Map(circuit.devices.map((device) => [device.name, device]));
  const found = new Map<string, Omit<SignalChange, 'id' | 'level'> & { changes: Change[] }>();
  const start = new Map<string, Level>();
  for (const happening of happenings)
    for (const { id, level, ...line } of told(happening, devices, rename)) {
      if (happening.act < 0) start.set(id, level);
      let signal = found.get(id);
      if (!signal) {
        const closed = scenario.start === 'live' && isFeeding(devices.get(happening.device));
        signal = { ...line, changes: [{ ms: 0, level: closed ? 1 : 0 }] };
        found.set(id, signal);
      }
      if (happening.act < 0) signal.changes[0] = { ms: 0, level: start.get(id) ?? 0 };
      else signal.changes.push({ ms: happening.ms, level });
    }
  const order = new Map(circuit.devices.map(({ name }, index) => [name, index]));
  const place = (id: string): number => order.get(id.split(/[ :]/)[0] ?? '') ?? 0;
  const signals = [...found]
    .sort(([a, one], [b, two]) => one.rank - two.rank || place(a) - place(b))
    .map(([id, { rank: _, ...line }]) => ({ id, ...line }));
  // Waiting is what the axis shows by itself.
  const acts = happenings
    .filter(({ what, act }) => what === 'act' && scenario.acts[act]?.kind !== 'wait')
    .map(({ ms, act }) => ({ ms, act: actSaid(scenario.acts[act]!, circuit) }));
  return { signals, acts, end: state.now * 1000 };
}

/** What stands before a line: `-K1 coil`. */
export const nameOf = ({ drawing: { timing } }: Pick<Words, 'drawing'>, { name, of }: Signal): string =>
  of === undefined ? name : timing[of](name);
