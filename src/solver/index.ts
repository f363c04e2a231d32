/** The exact solver. A circuit becomes a plan, a plan a machine; a machine is settled, explored, timed, read and traced. */
export { applyAct, type Effect } from './acts.ts';
export type { Ending } from './endings.ts';
export { EXPLORE_LIMITS, type Exploration, type ExploreLimits, explore } from './explore.ts';
export { type Machine, machineOf } from './machine.ts';
export { meter } from './meter.ts';
export { isClosed, type Network, solveNetwork } from './network.ts';
export { everyBeginning, everyOutcome, isFlashing, onlyState, type Standing } from './outcomes.ts';
export type { Plan, PlanLoad, PlanMechanism, PlanSupply, PlanSwitch } from './plan.ts';
export { planOf } from './plan-of.ts';
export { begin, doAct, play } from './play.ts';
export { inputStateAt, lampStateAt, type Readings, readState } from './readings.ts';
export { runTimed, type TimedRun, type Watch } from './run.ts';
export { everyRule, shortCircuit } from './short-circuit.rule.ts';
export { type Solved, solve, solvePlan, tell } from './solve.ts';
export { copyState, restoreState, type State, startState } from './state.ts';
export { advance } from './time.ts';
export { traceAll, traceLoad } from './trace.ts';
export { variantOf } from './variant.ts';
