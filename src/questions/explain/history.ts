/** A scenario gone through act by act: where everything stands after each, and what has moved, in its order. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Act, Scenario } from '../../../shared/scenario.ts';
import type { Blocker, LoadTrace, TraceHop } from '../../../shared/solution.ts';
import { readAs } from '../../circuit/index.ts';
import {
  begin,
  copyState,
  doAct,
  isClosed,
  type Machine,
  type PlanSwitch,
  runTimed,
  type State,
  traceLoad,
} from '../../solver/index.ts';
import { rightSolver, type Standpoint, standpointOf } from '../solving.ts';
import { stopsBefore } from './potential.ts';
import { openBesides } from './series.ts';

export interface Stage {
  /** How many acts have been done. */
  readonly after: number;
  /** The act that led here; none at the start. */
  readonly act: Act | undefined;
  readonly state: State;
  /** Mechanisms that stand elsewhere than before it (at the start: than drawn), the first mover first. */
  readonly moved: readonly number[];
}

export interface History {
  readonly circuit: Circuit;
  readonly scenario: Scenario;
  readonly machine: Machine;
  readonly stages: readonly Stage[];
  /** The solver's trace of a load after so many acts, worked out once. */
  readonly trace: (after: number, load: string) => LoadTrace | undefined;
  /** What else is open on the way of a load that is stopped, after what its trace names. */
  readonly besides: (after: number, load: string) => readonly Blocker[];
  /** What can be read after so many acts, worked out once. */
  readonly standpoint: (after: number) => Standpoint;
}

/** Ranks of the mechanisms in each act, by when they arrive in the timed run; the act of the start is -1. */
function arrivals(machine: Machine, scenario: Scenario): ReadonlyMap<string, number> {
  const ranks = new Map<string, number>();
  runTimed(machine, scenario).happenings.forEach(({ act, what, device }, rank) => {
    if (what === 'arrives' || what === 'trips') ranks.set(`${act} ${device}`, rank);
  });
  return ranks;
}

export function historyOf(circuit: Circuit, scenario: Scenario): History {
  const machine = rightSolver().machine(circuit, scenario);
  const ranks = arrivals(machine, scenario);
  const stages: Stage[] = [];
  const note = (state: State, act: Act | undefined, before: (mechanism: number) => number): void => {
    const after = stages.length;
    const rank = (mechanism: number): number =>
      ranks.get(`${after - 1} ${machine.plan.mechanisms[mechanism]!.id}`) ?? -1;
    const moved = machine.plan.mechanisms
      .map((_, mechanism) => mechanism)
      .filter((mechanism) => state.at[mechanism] !== before(mechanism))
      .sort((a, b) => rank(a) - rank(b));
    stages.push({ after, act, state: copyState(state), moved });
  };
  const state = begin(machine, scenario.start);
  note(state, undefined, (mechanism) => 1 << machine.plan.mechanisms[mechanism]!.live);
  for (const act of scenario.acts) {
    const before = state.at.slice();
    doAct(machine, state, act);
    note(state, act, (mechanism) => before[mechanism]!);
  }
  const traces = new Map<string, LoadTrace | undefined>();
  const trace = (after: number, load: string): LoadTrace | undefined => {
    const key = `${after} ${load}`;
    if (!traces.has(key)) traces.set(key, tracedToCause(machine, stages[after]!.state, load));
    return traces.get(key);
  };
  const besides = (after: number, load: string): readonly Blocker[] => {
    const { fed = true, stoppedBy = [] } = trace(after, load) ?? {};
    return fed ? [] : openBesides({ machine, state: stages[after]!.state }, load, stoppedBy, traced);
  };
  const standpoints = new Map<number, Standpoint>();
  const standpoint = (after: number): Standpoint => {
    const known = standpoints.get(after) ?? standpointOf(machine, stages[after]!.state);
    standpoints.set(after, known);
    return known;
  };
  return { circuit, scenario, machine, stages, trace, besides, standpoint };
}

/**
 * The solver's trace of a load. A winding in star has no way of its own to a return, so what stops a motor is what keeps the
 * line from its terminal.
 */
function traced(machine: Machine, state: State, id: string): LoadTrace | undefined {
  const trace = traceLoad(machine, state, id);
  if (!trace || trace.fed || trace.stoppedBy.length > 0) return trace;
  const load = machine.plan.loads.find((each) => each.id === id)!;
  if (load.role === 'dirt' || readAs(load.role) !== 'winding') return trace;
  return { ...trace, stoppedBy: [...stopsBefore(machine, state, `${load.device}:${load.from}`)] };
}

/**
 * As `traced`; of a coil that its own contact would hold, what keeps it out even with that closed, where there is such a thing: that a
 * relay has not operated is no reason for its being at rest.
 */
function tracedToCause(machine: Machine, state: State, id: string): LoadTrace | undefined {
  const trace = traced(machine, state, id);
  const mechanism = machine.plan.loads.find((load) => load.id === id)?.mechanism ?? -1;
  if (!trace || trace.fed || mechanism < 0 || state.at[mechanism] !== 1) return trace;
  const switchOf = (blocker: Blocker): number =>
    machine.plan.switches.findIndex(
      ({ device, from, to }) =>
        device === blocker.device &&
        ((from === blocker.enter && to === blocker.leave) ||
          (from === blocker.leave && to === blocker.enter)),
    );
  const isOwn = (blocker: Blocker): boolean =>
    machine.plan.switches[switchOf(blocker)]?.mechanism === mechanism;
  if (!trace.stoppedBy.some(isOwn)) return trace;
  const operated = copyState(state);
  operated.at[mechanism] = 2;
  const { fed, stoppedBy } = traceLoad(machine, operated, id) ?? trace;
  const stands = (blocker: Blocker): boolean => {
    const contact = switchOf(blocker);
    return !isOwn(blocker) && (contact < 0 || !isClosed(machine, state.at, contact));
  };
  return !fed && stoppedBy.length > 0 && stoppedBy.every(stands) ? { ...trace, stoppedBy } : trace;
}

/** The contact between two terminals of a device that a hop goes through; none where it goes through a load. */
export const switchAt = ({ machine }: History, { device, enter, leave }: TraceHop): PlanSwitch | undefined =>
  machine.plan.switches.find(
    ({ device: name, from, to }) =>
      name === device && ((from === enter && to === leave) || (from === leave && to === enter)),
  );

/** Mechanisms whose contacts are on a traced path, or stop it. */
export function mechanismsOn(history: History, { path, stoppedBy }: LoadTrace): readonly number[] {
  const found = [...path, ...stoppedBy].map((hop) => switchAt(history, hop)?.mechanism ?? -1);
  return [...new Set(found)].filter((mechanism) => mechanism >= 0);
}

/** Ids of the coils that move a mechanism. */
export const coilsOf = ({ machine }: History, mechanism: number): readonly string[] =>
  machine.plan.loads.filter((load) => load.mechanism === mechanism).map(({ id }) => id);

export const isRelay = ({ machine }: History, mechanism: number): boolean => {
  const { drive } = machine.plan.mechanisms[mechanism]!;
  return drive !== 'act' && drive !== 'feed';
};

/**
 * Everything that what is asked hangs on: the mechanisms on the traces of the loads, those on the traces of their coils
 * whenever they moved, and so on.
 */
export function relevantTo(
  history: History,
  asked: readonly { readonly load: string; readonly after: number }[],
): ReadonlySet<number> {
  const found = new Set<number>();
  const queue: number[] = [];
  const add = (after: number, load: string): void => {
    const trace = history.trace(after, load);
    if (!trace) return;
    for (const mechanism of mechanismsOn(history, trace)) {
      if (found.has(mechanism)) continue;
      found.add(mechanism);
      queue.push(mechanism);
    }
  };
  const ends = new Set(asked.map(({ after }) => after));
  for (const { load, after } of asked) {
    add(after, load);
    const coil = history.machine.plan.loads.find(({ id, mechanism }) => id === load && mechanism >= 0);
    if (coil && !found.has(coil.mechanism)) {
      found.add(coil.mechanism);
      queue.push(coil.mechanism);
    }
  }
  for (const mechanism of queue) {
    for (const { after, moved } of history.stages) {
      if (!moved.includes(mechanism) && !ends.has(after)) continue;
      for (const coil of coilsOf(history, mechanism)) add(after, coil);
    }
  }
  return found;
}
