/** Circuits for tests, built without the notation's reader: devices as data, paths as hops. */
import type { Circuit, Device, Path, Step, Supply } from '../../shared/circuit.ts';
import type { Act, Fault, Scenario } from '../../shared/scenario.ts';

export const AC: Supply = { name: 'A', volts: 24, current: 'AC', earthed: false };
export const DC: Supply = { name: 'B', volts: 24, current: 'DC', earthed: false };
const rating = { volts: 24, current: 'AC' } as const;

export const relay = (name: string, poles = 1): Device => ({ kind: 'relay', name, poles, rating });
export const latching = (name: string): Device => ({ kind: 'latching-relay', name, poles: 1, rating });
export const lamp = (name: string): Device => ({ kind: 'lamp', name, rating });
export const breaker = (name: string): Device => ({ kind: 'breaker', name, poles: 1 });
export const isolator = (name: string, poles = 1): Device => ({ kind: 'isolator', name, poles });
export const timer = (kind: 'on-delay' | 'off-delay', name: string, seconds: number): Device => ({
  kind,
  name,
  seconds,
  poles: 1,
  rating,
});
const contact = (form: 'make' | 'break') =>
  form === 'make' ? { form, terminals: ['13', '14'] } : { form, terminals: ['21', '22'] };
export const button = (name: string, form: 'make' | 'break' = 'make'): Device => ({
  kind: 'push-button',
  name,
  contacts: [contact(form)],
});
export const field = (name: string, form: 'make' | 'break' = 'make'): Device => ({
  kind: 'field-contact',
  name,
  contacts: [contact(form)],
});
export const inputs = (name: string, count: number): Device => ({
  kind: 'inputs',
  name,
  count,
  type: '24V-3',
  points: [],
});

function step(text: string): Step {
  const [device = '', terminals = ''] = text.split(':');
  const at = /^([A-Z0-9]+[+-]?)(?:-(.+))?$/.exec(terminals);
  if (!at) throw new Error(`no hop: ${text}`);
  return { device, enter: at[1]!, ...(at[2] ? { leave: at[2] } : {}) };
}

/** `sheet 2` among the paths begins another sheet. */
export function circuit(devices: readonly Device[], paths: readonly string[], supplies = [AC]): Circuit {
  const drawn: Path[] = [];
  let sheet = 1;
  for (const line of paths) {
    if (line.startsWith('sheet ')) sheet = Number(line.slice(6));
    else drawn.push({ sheet, steps: line.split(/\s+/).map(step) });
  }
  return { supplies, devices: [...devices], sheets: [], paths: drawn };
}

export const live = (acts: readonly Act[] = [], faults: readonly Fault[] = []): Scenario => ({
  start: 'live',
  faults: [...faults],
  acts: [...acts],
});

export const make = (device: string): Act => ({ kind: 'make', device });
export const press = (device: string): Act => ({ kind: 'press', device });
export const release = (device: string): Act => ({ kind: 'release', device });
export const wait = (seconds: number): Act => ({ kind: 'wait', seconds });
