/** Why the relays stand as they stand on which something hangs, from the nearest back to the cause. */
import type { LoadTrace } from '../../../shared/solution.ts';
import type { ExplanationStep } from '../said.ts';
import { type History, isRelay, mechanismsOn } from './history.ts';
import { relayStands } from './standing.ts';

/**
 * One statement for each relay whose contacts are on the traces, or on those of its coil, after so many acts; each relay once.
 *
 * @param except - mechanisms that have been told of
 */
export function behind(
  history: History,
  after: number,
  traces: readonly LoadTrace[],
  except: readonly number[] = [],
): ExplanationStep[] {
  const told = new Set(except);
  const steps: ExplanationStep[] = [];
  const tell = (trace: LoadTrace): void => {
    for (const mechanism of mechanismsOn(history, trace)) {
      if (!isRelay(history, mechanism) || told.has(mechanism)) continue;
      told.add(mechanism);
      const item = history.machine.plan.mechanisms[mechanism]!.id;
      const { said, about, traces: own } = relayStands(history, after, { item });
      steps.push({ said, about });
      for (const next of own) tell(next);
    }
  };
  for (const trace of traces) tell(trace);
  return steps;
}
