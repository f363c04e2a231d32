/** Starting state, faults and acts in words. */
import type { Circuit, DeviceKind } from '../../../shared/circuit.ts';
import type { Act, Scenario } from '../../../shared/scenario.ts';
import { actInWords, faultInWords } from '../../circuit/index.ts';

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[], word = 'and'): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} ${word} ${last}`;
}

export const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

const named = (circuit: Circuit, ...kinds: readonly DeviceKind[]): string[] =>
  circuit.devices.filter(({ kind }) => kinds.includes(kind)).map(({ name }) => name);

function startInWords(circuit: Circuit, start: Scenario['start']): string[] {
  const switches = named(circuit, 'isolator', 'breaker');
  const buttons = named(circuit, 'push-button', 'emergency-stop').length > 0;
  const field = named(circuit, 'field-contact', 'limit-switch', 'float-switch').length > 0;
  const rest = [
    ...(buttons ? ['nothing is pressed'] : []),
    ...(field ? ['no field contact is actuated'] : []),
  ];
  const supplies = circuit.supplies.length > 1 ? 'All supplies are on' : 'The supply is on';
  if (start === 'dead') {
    return [
      'The drawing shows everything at rest, and that is how it begins.',
      switches.length > 0
        ? `${supplies}, but ${listed(switches)} ${switches.length > 1 ? 'are' : 'is'} open.`
        : `${supplies}.`,
      ...(rest.length > 0 ? [sentence(listed(rest))] : []),
    ];
  }
  return [
    'The drawing shows everything at rest.',
    switches.length > 0
      ? `${supplies}, and ${listed(switches)} ${switches.length > 1 ? 'are' : 'is'} closed.`
      : `${supplies}.`,
    ...(rest.length > 0 ? [sentence(listed(rest))] : []),
  ];
}

export function actsInWords(acts: readonly Act[], circuit: Circuit): string[] {
  if (acts.length === 0) return [];
  if (acts.length === 1) return [`Then this is done: ${actInWords(acts[0]!, circuit)}.`];
  return [
    'Then this is done, one after the other:',
    ...acts.map((act, index) => `${index + 1}. ${sentence(actInWords(act, circuit))}`),
  ];
}

/**
 * A question always says where it begins. The drawn state and the starting state are two things: the drawing shows breakers
 * and isolators open, and a scenario begins with them closed.
 */
export function situationOf(circuit: Circuit, scenario: Scenario): string[] {
  const { start, faults, acts } = scenario;
  return [
    ...startInWords(circuit, start),
    ...faults.map((fault) => `There is a fault: ${faultInWords(fault, circuit)}.`),
    ...actsInWords(acts, circuit),
  ];
}

const TIMERS: readonly DeviceKind[] = ['on-delay', 'off-delay', 'flasher'];

/** What "operated" means of a timer, where there is one. */
export const timerNote = (circuit: Circuit): string =>
  named(circuit, ...TIMERS).length > 0 ? ' A timer has operated when its contacts have changed over.' : '';
