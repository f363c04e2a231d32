import type { LoadTrace } from '../../shared/solution.ts';
import { blockersOf } from './blockers.ts';
import { fedPath } from './fed-path.ts';
import type { Machine } from './machine.ts';
import { type Network, solveNetwork } from './network.ts';
import type { State } from './state.ts';

/**
 * Why a load is in its state: the path that feeds it, or the smallest set of open contacts that stops it.
 *
 * @param id - `-H1`, `-K3`, `-A1:I1`, `-K7:B1`
 * @returns undefined when the machine has no such load
 */
export function traceLoad(machine: Machine, state: State, id: string): LoadTrace | undefined {
  const load = machine.plan.loads.findIndex((entry) => entry.id === id);
  return load < 0
    ? undefined
    : traceIndex(machine, state, solveNetwork(machine, state.at, state.supplyOn), load);
}

function traceIndex(machine: Machine, state: State, network: Network, load: number): LoadTrace {
  const { id } = machine.plan.loads[load]!;
  const path = fedPath(machine, state, network, load);
  if (path) return { load: id, fed: true, path, stoppedBy: [] };
  return { load: id, fed: false, path: [], stoppedBy: blockersOf(machine, state, load) };
}

/** Every coil, lamp, load and input of a settled state. */
export function traceAll(machine: Machine, state: State): LoadTrace[] {
  const network = solveNetwork(machine, state.at, state.supplyOn);
  return machine.plan.loads.flatMap(({ role }, load) =>
    role === 'dirt' ? [] : [traceIndex(machine, state, network, load)],
  );
}
