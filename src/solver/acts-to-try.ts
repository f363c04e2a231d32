import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { actsOn } from '../circuit/index.ts';
import type { Machine } from './machine.ts';

/**
 * Acts that a search through what a plant can come to doesn't need: with a feeding device open there is less of it, and a
 * relay held by hand is no state that it comes to.
 */
const LEFT_OUT: ReadonlySet<Act['kind']> = new Set(['open', 'close', 'hold', 'free']);

/** What can be done in a plant that is on: buttons, selectors, field contacts, overloads, outputs, and letting timers run. */
export function actsToTry(circuit: Circuit, { plan }: Machine): Act[] {
  const acts: Act[] = circuit.devices.flatMap(actsOn).filter(({ kind }) => !LEFT_OUT.has(kind));
  // Timers get their turn: once the longest has run, all have.
  const longest = Math.max(0, ...plan.mechanisms.flatMap(({ delays }) => delays));
  if (longest > 0) acts.push({ kind: 'wait', seconds: Math.min(86_400, longest) });
  return acts;
}
