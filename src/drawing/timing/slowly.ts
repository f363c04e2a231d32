/** What changes in a scenario, with the operate and release times that relays have: their contacts are seen on their way. */
import type { Circuit, Device } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Happening } from '../../../shared/solution.ts';
import { actSaid, anatomyOf, hasCoil } from '../../circuit/index.ts';
import { machineOf, planOf, runTimed } from '../../solver/index.ts';
import type { Rename } from '../letters.ts';
import { type ActAt, isFeeding, isHigh, type Level, type Line, Lines, type Signals } from './lines.ts';

const lampLevel = (to: string): Level => (to === 'lit' ? 1 : to === 'dark' || to === 'off' ? 0 : 0.5);

interface Told {
  readonly line: Line;
  /** Undefined: it sets out. */
  readonly level: Level | undefined;
}

function told(
  { what, device, to }: Happening,
  devices: ReadonlyMap<string, Device>,
  rename: Rename,
): Told | undefined {
  const [owner = '', point] = device.split(':');
  const entry = devices.get(owner);
  const name = `${rename(owner)}${point ? `:${point}` : ''}`;
  switch (what) {
    case 'energised':
    case 'de-energised':
      return {
        line: { id: `${device} coil`, name, of: 'coil', rank: 1 },
        level: what === 'energised' ? 1 : 0,
      };
    case 'leaves':
    case 'arrives': {
      const coil = entry !== undefined && hasCoil(entry);
      const position = entry ? anatomyOf(entry).mechanisms[0]!.positions.indexOf(to) : 0;
      return {
        line: { id: `${device} contacts`, name, ...(coil ? { of: 'contacts' } : {}), rank: coil ? 1 : 0 },
        level: what === 'leaves' ? undefined : isHigh(entry, position) ? 1 : 0,
      };
    }
    case 'lamp':
    case 'load':
      return { line: { id: owner, name: rename(owner), rank: 2 }, level: lampLevel(to) };
    case 'input':
      return { line: { id: device, name, rank: 2 }, level: to === '1' ? 1 : to === '0' ? 0 : 0.5 };
    case 'trips':
      return { line: { id: `${device} contacts`, name, rank: 0 }, level: 0 };
    case 'act':
      return undefined;
  }
}

/**
 * Runs the scenario in time and keeps every device that changes. What holds before the first act is where its line
 * begins; breakers and isolators begin closed in a live start.
 */
export function slowly(circuit: Circuit, scenario: Scenario, rename: Rename): Signals {
  const { happenings, state } = runTimed(machineOf(planOf(circuit, scenario.faults)), scenario, () => '');
  const devices = new Map(circuit.devices.map((device) => [device.name, device]));
  const lines = new Lines(circuit);
  const moments: number[] = [];
  const acts: ActAt[] = [];
  const leaving = new Map<string, number>();
  for (const happening of happenings) {
    const { act: index, ms, what } = happening;
    const act = what === 'act' ? scenario.acts[index]! : undefined;
    // Waiting is what the axis shows by itself.
    if (act?.kind === 'wait') continue;
    // What is so before anything is done is where the lines begin, however long it took.
    const before = index < 0;
    if (!before && (act || moments.length === 0 || ms > moments.at(-1)!)) {
      if (!act && moments.length === 0) moments.push(0);
      if (act || ms > moments.at(-1)!) moments.push(ms);
    }
    const at = moments.length - 1;
    if (act) acts.push({ at, act: actSaid(act, circuit) });
    const change = told(happening, devices, rename);
    if (!change) continue;
    const { line, level } = change;
    if (level === undefined) {
      leaving.set(line.id, at);
      continue;
    }
    const since = leaving.get(line.id);
    leaving.delete(line.id);
    const first = scenario.start === 'live' && isFeeding(devices.get(happening.device)) ? 1 : 0;
    const slope = since !== undefined && since < at ? { since } : {};
    lines.stands(line, { at, level, ...slope }, first);
  }
  if (moments.length === 0) moments.push(0);
  if (state.now * 1000 > moments.at(-1)!) moments.push(state.now * 1000);
  return { moments, signals: lines.all(), acts, operateTimes: true };
}
