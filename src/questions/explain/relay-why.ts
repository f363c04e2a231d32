/** Why a relay stands where it stands. */
import type { Blocker, LoadTrace } from '../../../shared/solution.ts';
import { copyState, type PlanLoad, type State, traceLoad, voltsAcross } from '../../solver/index.ts';
import type { Feed, ReasonSaid, UnfedSaid } from '../../words/index.ts';
import { feedOf } from './feed.ts';
import { coilsOf, type History } from './history.ts';
import { stopped } from './wording.ts';

export interface Why<Reason = ReasonSaid> {
  readonly reason: Reason;
  /** Traces it was read from. */
  readonly traces: readonly LoadTrace[];
}

/** What is told of a coil: its trace, in the state in which that is how things stand. */
interface Moment {
  readonly trace: LoadTrace;
  readonly state: State;
  /** What is open besides; nothing in a moment that is past. */
  readonly besides: () => readonly Blocker[];
}

interface Coil {
  readonly load: PlanLoad;
  readonly volts: number;
  readonly told: Moment;
  /** 1 enough to operate, -1 little enough to release. */
  readonly band: -1 | 0 | 1;
}

function coilAt(history: History, after: number, id: string): Coil {
  const { machine, stages } = history;
  const { state } = stages[after]!;
  const index = machine.plan.loads.findIndex((load) => load.id === id);
  const load = machine.plan.loads[index]!;
  const volts = voltsAcross(state, index);
  const { operate = Infinity, release = 0 } = load.limits ?? {};
  const share = volts / load.volts;
  const band = share >= operate - 1e-9 ? 1 : share <= release + 1e-9 ? -1 : 0;
  const told: Moment = { trace: history.trace(after, id)!, state, besides: () => history.besides(after, id) };
  return { load, volts, told, band };
}

const feedTo = (history: History, { told }: Coil): Feed => feedOf(history, told.trace, told.state);

const isFed = ({ band, load }: Coil): boolean => band > 0 && !load.dead;

/** For how many seconds a timer has been timing, and for how many it does. */
function timing(history: History, after: number, mechanism: number): { over: number; of: number } {
  const { state } = history.stages[after]!;
  const of = history.machine.plan.mechanisms[mechanism]!.delays[0]!;
  return { over: Math.max(0, of - (state.due[mechanism]! - state.now)), of };
}

function unfed(history: History, coil: Coil): Why<UnfedSaid> {
  const { load, volts, told, band } = coil;
  const traces = [told.trace];
  if (load.dead) return { reason: { says: 'coilBurntThrough' }, traces };
  if (told.trace.fed && band === 0)
    return {
      reason: { says: 'coilHasOnly', has: volts, rated: load.volts, feed: feedTo(history, coil) },
      traces,
    };
  return { reason: stopped(history, told.trace.stoppedBy, told.state, told.besides()), traces };
}

function whyOperated(history: History, after: number, mechanism: number, coil: Coil): Why {
  const { state } = history.stages[after]!;
  const { drive, delays } = history.machine.plan.mechanisms[mechanism]!;
  const traces = [coil.told.trace];
  if (state.held[mechanism]) return { reason: { says: 'heldByHand' }, traces: [] };
  if (isFed(coil)) {
    const feed = feedTo(history, coil);
    return {
      reason:
        drive === 'on-delay' ? { says: 'coilFedFor', feed, seconds: delays[0]! } : { says: 'coilFed', feed },
      traces,
    };
  }
  if (drive === 'latch') return { reason: { says: 'latched' }, traces: [] };
  if (drive === 'off-delay') {
    const { reason: why, traces: read } = unfed(history, coil);
    return { reason: { says: 'stillReleasing', why, ...timing(history, after, mechanism) }, traces: read };
  }
  return { reason: { says: 'stillHeld', has: coil.volts }, traces };
}

function whyAtRest(history: History, after: number, mechanism: number, coil: Coil): Why {
  const { drive, frozenAt, delays } = history.machine.plan.mechanisms[mechanism]!;
  const traces = [coil.told.trace];
  const resetCoil = (): Coil => coilAt(history, after, coilsOf(history, mechanism).at(-1)!);
  if (frozenAt !== undefined) return { reason: { says: 'stuck' }, traces: [] };
  if (isFed(coil)) {
    // Fed and still at rest: its time isn't over.
    if (drive === 'on-delay')
      return {
        reason: {
          says: 'stillOperating',
          feed: feedTo(history, coil),
          ...timing(history, after, mechanism),
        },
        traces,
      };
    if (drive === 'latch') {
      const reset = resetCoil();
      return { reason: { says: 'resetToo', feed: feedTo(history, reset) }, traces: [reset.told.trace] };
    }
    // Between two flashes its contacts are as at rest.
    if (drive === 'flasher') return { reason: { says: 'coilFed', feed: feedTo(history, coil) }, traces };
  }
  if (drive === 'latch') {
    const reset = resetCoil();
    if (reset.band > 0)
      return { reason: { says: 'reset', feed: feedTo(history, reset) }, traces: [reset.told.trace] };
    const { reason: why, traces: read } = unfed(history, coil);
    return { reason: { says: 'notSet', why }, traces: read };
  }
  const unfedNow = unfed(history, coil);
  if (drive !== 'off-delay' || !wasFed(history, after, coil)) return unfedNow;
  return { ...unfedNow, reason: { says: 'timeOver', why: unfedNow.reason, seconds: delays[0]! } };
}

/** Whether a coil was fed at some time before: then it is its time that is over. */
const wasFed = (history: History, after: number, { load }: Coil): boolean =>
  history.stages.slice(0, after).some((stage) => history.trace(stage.after, load.id)?.fed);

/** What has a supply of its own follows its control input as long as it is supplied. */
function whyBySignal(history: History, after: number, mechanism: number, control: Coil): Why {
  const operated = history.stages[after]!.state.at[mechanism] === 2;
  const { frozenAt, delays } = history.machine.plan.mechanisms[mechanism]!;
  if (operated && history.stages[after]!.state.held[mechanism])
    return { reason: { says: 'heldByHand' }, traces: [] };
  if (frozenAt !== undefined) return { reason: { says: 'stuck' }, traces: [] };
  if (isFed(control) && operated)
    return {
      reason: { says: 'controlFed', feed: feedTo(history, control) },
      traces: [control.told.trace],
    };
  const supply = coilAt(history, after, coilsOf(history, mechanism).at(-1)!);
  if (supply.band < 0 || isFed(control)) {
    const { reason: why, traces } = unfed(history, supply);
    return { reason: { says: 'unsupplied', why }, traces };
  }
  const { reason: why, traces } = unfed(history, control);
  if (operated)
    return { reason: { says: 'controlStillReleasing', why, ...timing(history, after, mechanism) }, traces };
  return wasFed(history, after, control)
    ? { reason: { says: 'controlTimeOver', why, seconds: delays[0]! }, traces }
    : { reason: { says: 'controlGone', why }, traces };
}

function whyWith(history: History, after: number, mechanism: number, coil: Coil): Why {
  if (coil.load.role === 'control') return whyBySignal(history, after, mechanism, coil);
  const operated = history.stages[after]!.state.at[mechanism] === 2;
  return operated ? whyOperated(history, after, mechanism, coil) : whyAtRest(history, after, mechanism, coil);
}

/**
 * Why a relay has just operated or released: what came to its coil, or left it, while its own contacts still stood where
 * they were. A seal-in operates over its button, and releases because of what opened, not because of its own contact.
 */
export function whyMoved(history: History, after: number, mechanism: number): Why {
  const { machine, stages } = history;
  const coil = coilAt(history, after, coilsOf(history, mechanism)[0]!);
  const state = copyState(stages[after]!.state);
  const operated = state.at[mechanism] === 2;
  state.at[mechanism] = operated ? 1 : 2;
  const trace = traceLoad(machine, state, coil.load.id)!;
  const tells = trace.fed === coil.told.trace.fed && (trace.fed || trace.stoppedBy.length > 0);
  const told = tells ? { trace, state } : coil.told;
  return whyWith(history, after, mechanism, { ...coil, told: { ...told, besides: () => [] } });
}

/** Why a mechanism that a coil moves stands where it stands after so many acts. */
export const whyRelay = (history: History, after: number, mechanism: number): Why =>
  whyWith(history, after, mechanism, coilAt(history, after, coilsOf(history, mechanism)[0]!));
