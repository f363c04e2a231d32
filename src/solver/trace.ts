import type { LoadTrace } from '../../shared/solution.ts';
import { Blocking } from './blockers.ts';
import { Feeding } from './fed-path.ts';
import type { Machine } from './machine.ts';
import { solveNetwork } from './network.ts';
import type { State } from './state.ts';

/** What conducts and what is open in one state; each is made when it is first asked for. */
class Tracer {
  private readonly machine: Machine;
  private readonly state: State;
  private feeding: Feeding | undefined;
  private blocking: Blocking | undefined;

  constructor(machine: Machine, state: State) {
    this.machine = machine;
    this.state = state;
  }

  trace(load: number): LoadTrace {
    const { machine, state } = this;
    const { id } = machine.plan.loads[load]!;
    this.feeding ??= new Feeding(machine, state, solveNetwork(machine, state.at, state.supplyOn));
    const path = this.feeding.path(load);
    if (path) return { load: id, fed: true, path, stoppedBy: [] };
    this.blocking ??= new Blocking(machine, state);
    return { load: id, fed: false, path: [], stoppedBy: this.blocking.of(load) };
  }
}

/**
 * Why a load is in its state: the path that feeds it, or the smallest set of open contacts that stops it.
 *
 * @param id - `-H1`, `-K3`, `-A1:I1`, `-K7:B1`
 * @returns undefined when the machine has no such load
 */
export const traceLoad = (machine: Machine, state: State, id: string): LoadTrace | undefined =>
  tracerOf(machine, state)(id);

/** The same for whoever asks for several loads of one state. */
export function tracerOf(machine: Machine, state: State): (id: string) => LoadTrace | undefined {
  const tracer = new Tracer(machine, state);
  return (id) => {
    const load = machine.plan.loads.findIndex((entry) => entry.id === id);
    return load < 0 ? undefined : tracer.trace(load);
  };
}

/** Every coil, lamp, load and input of a settled state. */
export function traceAll(machine: Machine, state: State): LoadTrace[] {
  const tracer = new Tracer(machine, state);
  return machine.plan.loads.flatMap(({ role }, load) => (role === 'dirt' ? [] : [tracer.trace(load)]));
}
