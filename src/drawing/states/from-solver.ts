/** What the solver found, as a state to show. */
import type { LoadTrace, Solution } from '../../../shared/solution.ts';
import {
  distance,
  type Machine,
  type Network,
  type Solved,
  type State,
  solveNetwork,
} from '../../solver/index.ts';
import { pickOut } from './picked-out.ts';
import type { PictureState } from './picture-state.ts';
import type { ShownState } from './shown-state.ts';

/** Share of a supply's voltage from which a conductor counts as energised. */
const ENERGISED = 0.01;

/** Position of each mechanism from its mask: one bit at rest, two on the way. */
export function positionsOf(machine: Machine, at: Uint8Array): Map<string, number | undefined> {
  return new Map(
    machine.plan.mechanisms.map(({ id }, index) => {
      const mask = at[index] as number;
      return [id, (mask & (mask - 1)) === 0 ? 31 - Math.clz32(mask) : undefined];
    }),
  );
}

/** Nodes with a voltage against the return pole of a supply that they share a reference with. */
function liveNodes(machine: Machine, { volts, reference }: Network, supplyOn: Uint8Array): Uint8Array {
  const { plan } = machine;
  const live = new Uint8Array(plan.nodes);
  plan.supplies.forEach(({ poles, supply }, index) => {
    const common = poles[poles.length - 1]?.node;
    if (!supplyOn[index] || common === undefined) return;
    for (let node = 0; node < plan.nodes; node++) {
      if (reference[node] !== reference[common]) continue;
      if (distance(volts, node, common) > ENERGISED * supply.volts) live[node] = 1;
    }
  });
  return live;
}

/** The terminals of energised conductors, with every mechanism at `at`. */
export function energisedTerminals(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Set<string> {
  const live = liveNodes(machine, solveNetwork(machine, at, supplyOn), supplyOn);
  const terminals = new Set<string>();
  for (const [terminal, node] of machine.plan.nodeOf) if (live[node]) terminals.add(terminal);
  return terminals;
}

type Readings = Pick<Solution, 'coils' | 'lamps' | 'loads' | 'inputs'>;

export function readingsShown({
  coils,
  lamps,
  loads,
  inputs,
}: Readings): Pick<ShownState, 'coils' | 'loads' | 'inputs'> {
  return {
    coils: new Map(Object.entries(coils).map(([id, { energised }]) => [id, energised])),
    loads: new Map([...Object.entries(lamps), ...Object.entries(loads)]),
    inputs: new Map(Object.entries(inputs)),
  };
}

/** Of the loads named, the path that feeds each or the contacts that stop it. */
function picked(
  trace: readonly LoadTrace[],
  loads: readonly string[],
): Pick<PictureState, 'pickedOut' | 'stoppedBy'> {
  const asked = trace.filter(({ load }) => loads.includes(load));
  const paths = asked.filter(({ fed }) => fed).map(({ path }) => path);
  const stoppedBy = asked.filter(({ fed }) => !fed).flatMap((each) => each.stoppedBy);
  return { ...(asked.length > 0 ? { pickedOut: pickOut(paths) } : {}), stoppedBy };
}

/** The state after a scenario. `explain`: loads (`-H1`, `-K3`) whose path, or whose blocking contacts, are picked out. */
export function shownState(
  { solution, machine, state }: Solved,
  explain: readonly string[] = [],
): PictureState {
  return {
    ...readingsShown(solution),
    ...placed(machine, state),
    ...picked(solution.trace, explain),
  };
}

const placed = (machine: Machine, { at, supplyOn }: State): Pick<ShownState, 'positions' | 'energised'> => ({
  positions: positionsOf(machine, at),
  energised: energisedTerminals(machine, at, supplyOn),
});
