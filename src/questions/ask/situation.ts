/** Starting state, faults and acts. */
import type { Circuit, Device } from '../../../shared/circuit.ts';
import type { Act, Scenario } from '../../../shared/scenario.ts';
import { anatomyOf, faultSaid, traitsOf } from '../../circuit/index.ts';
import type { SituationSaid } from '../../words/index.ts';
import { actsSaid } from './acts-said.ts';

/** What is left alone at the start, where there is something to leave alone. */
function rest(circuit: Circuit): SituationSaid[] {
  const buttons = circuit.devices.some((device) => traitsOf(device).verbs.includes('press'));
  const field = circuit.devices.some((device) => traitsOf(device).movedBy === 'plant');
  if (buttons && field) return [{ says: 'nothingPressedNoneActuated' }];
  if (buttons) return [{ says: 'nothingPressed' }];
  return field ? [{ says: 'noneActuated' }] : [];
}

/** Drawn open, and closed in service: isolators and breakers. */
const closedInService = (device: Device): boolean =>
  anatomyOf(device).mechanisms.some(({ drive, live }) => drive === 'feed' && live > 0);

function started(circuit: Circuit, start: Scenario['start']): SituationSaid[] {
  const switches = circuit.devices.filter(closedInService).map(({ name }) => name);
  const supplies = circuit.supplies.length;
  const dead = start === 'dead';
  // A timer that is fed from the start begins its time then.
  const justNow = !dead && hasTimers(circuit);
  const fed: SituationSaid =
    switches.length === 0
      ? { says: 'suppliesOn', supplies, justNow }
      : { says: dead ? 'suppliesOnSwitchesOpen' : 'suppliesOnSwitchesClosed', supplies, switches, justNow };
  return [{ says: dead ? 'beginsAtRest' : 'drawnAtRest' }, fed, ...rest(circuit)];
}

function done(acts: readonly Act[], circuit: Circuit, eachAsked: boolean): SituationSaid[] {
  const [first, ...others] = actsSaid(acts, circuit, eachAsked);
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
 *
 * @param eachAsked - whether something is asked after each act, and not in the end alone
 */
export function situationOf(
  circuit: Circuit,
  { start, faults, acts }: Scenario,
  eachAsked = false,
): SituationSaid[] {
  return [
    ...(circuit.asFound ? [{ says: 'asFound' } as const] : []),
    ...started(circuit, start),
    ...faults.map((fault): SituationSaid => ({ says: 'fault', fault: faultSaid(fault, circuit) })),
    ...done(acts, circuit, eachAsked),
  ];
}

/** Whether it has to be said what "operated" means of a timer. */
export const hasTimers = (circuit: Circuit): boolean =>
  circuit.devices.some((device) => anatomyOf(device).mechanisms.some(({ delays }) => delays.length > 0));
