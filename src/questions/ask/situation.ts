/** Starting state, faults and acts. */
import type { Circuit, DeviceKind } from '../../../shared/circuit.ts';
import type { Act, Scenario } from '../../../shared/scenario.ts';
import { actSaid, faultSaid } from '../../circuit/index.ts';
import type { SituationSaid } from '../../words/index.ts';

const named = (circuit: Circuit, ...kinds: readonly DeviceKind[]): string[] =>
  circuit.devices.filter(({ kind }) => kinds.includes(kind)).map(({ name }) => name);

/** What is left alone at the start, where there is something to leave alone. */
function rest(circuit: Circuit): SituationSaid[] {
  const buttons = named(circuit, 'push-button', 'emergency-stop').length > 0;
  const field = named(circuit, 'field-contact', 'limit-switch', 'float-switch').length > 0;
  if (buttons && field) return [{ says: 'nothingPressedNoneActuated' }];
  if (buttons) return [{ says: 'nothingPressed' }];
  return field ? [{ says: 'noneActuated' }] : [];
}

function started(circuit: Circuit, start: Scenario['start']): SituationSaid[] {
  const switches = named(circuit, 'isolator', 'breaker');
  const supplies = circuit.supplies.length;
  const dead = start === 'dead';
  const fed: SituationSaid =
    switches.length === 0
      ? { says: 'suppliesOn', supplies }
      : { says: dead ? 'suppliesOnSwitchesOpen' : 'suppliesOnSwitchesClosed', supplies, switches };
  return [{ says: dead ? 'beginsAtRest' : 'drawnAtRest' }, fed, ...rest(circuit)];
}

function done(acts: readonly Act[], circuit: Circuit): SituationSaid[] {
  const [first, ...others] = acts.map((act) => actSaid(act, circuit));
  if (!first) return [];
  if (others.length === 0) return [{ says: 'act', act: first }];
  return [
    { says: 'actsFollow' },
    ...[first, ...others].map((act, index): SituationSaid => ({ says: 'actInTurn', number: index + 1, act })),
  ];
}

/**
 * A question always says where it begins. The drawn state and the starting state are two things: the drawing shows breakers
 * and isolators open, and a scenario begins with them closed.
 */
export function situationOf(circuit: Circuit, { start, faults, acts }: Scenario): SituationSaid[] {
  return [
    ...started(circuit, start),
    ...faults.map((fault): SituationSaid => ({ says: 'fault', fault: faultSaid(fault, circuit) })),
    ...done(acts, circuit),
  ];
}

const TIMERS: readonly DeviceKind[] = ['on-delay', 'off-delay', 'flasher'];

/** Whether it has to be said what "operated" means of a timer. */
export const hasTimers = (circuit: Circuit): boolean => named(circuit, ...TIMERS).length > 0;
