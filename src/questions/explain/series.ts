/**
 * Places that are open one after the other on the way to a load. What the solver names keeps the current away by itself; with
 * that closed something further on may be open too, and then closing what was named wouldn't feed the load.
 */
import type { Blocker, LoadTrace } from '../../../shared/solution.ts';
import {
  copyState,
  distance,
  type Machine,
  machineOf,
  type State,
  solveNetwork,
} from '../../solver/index.ts';

/** A machine in a state. */
export interface Standing {
  readonly machine: Machine;
  readonly state: State;
}

export type Trace = (machine: Machine, state: State, load: string) => LoadTrace | undefined;

/** The same with some open places closed and supplies on; whatever else there is stays where it stands. */
function closed({ machine, state }: Standing, places: readonly Blocker[]): Standing {
  const { plan } = machine;
  const on = copyState(state);
  const named = new Set<number>();
  // The main contacts of a contactor close together.
  const poles = new Set<number>();
  for (const { device, enter, leave } of places) {
    const supply = plan.supplies.findIndex(({ name }) => name === device);
    if (supply >= 0) on.supplyOn[supply] = 1;
    plan.switches.forEach((part, index) => {
      if (part.device !== device || part.from !== enter || part.to !== leave) return;
      named.add(index);
      if (part.main) poles.add(part.mechanism);
    });
  }
  const switches = plan.switches.map((part, index) =>
    named.has(index) || (part.main && poles.has(part.mechanism))
      ? { ...part, fixed: 'closed' as const }
      : part,
  );
  return { machine: machineOf({ ...plan, switches }), state: on };
}

/** A load with less than this share of its voltage has none. */
const SHARE = 1e-6;

/**
 * Whether nothing more keeps a load from its supply as everything stands: it has voltage, or what is closed joins the poles of
 * a supply, so that current comes there at any rate. That happens at a star point while delta is closed.
 */
function isDone({ machine, state }: Standing, load: string): boolean {
  const { a, b, volts } = machine.plan.loads.find(({ id }) => id === load)!;
  const network = solveNetwork(machine, state.at, state.supplyOn);
  return network.shorted.length > 0 || distance(network.volts, a, b) > SHARE * volts;
}

/**
 * What is open besides, after what stops a load, from the nearest on: with all of it closed nothing keeps the load from its
 * supply. Empty where closing what stops it does that already, and where nothing would.
 *
 * @param stoppedBy - what the trace of the load says
 */
export function openBesides(
  standing: Standing,
  load: string,
  stoppedBy: readonly Blocker[],
  trace: Trace,
): readonly Blocker[] {
  const besides: Blocker[] = [];
  let last = stoppedBy;
  let now = standing;
  while (last.length > 0) {
    now = closed(now, last);
    if (isDone(now, load)) return besides;
    last = trace(now.machine, now.state, load)?.stoppedBy ?? [];
    besides.push(...last);
  }
  return [];
}
