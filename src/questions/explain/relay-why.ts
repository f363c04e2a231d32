/** Why a relay stands where it stands. */
import type { LoadTrace } from '../../../shared/solution.ts';
import { timeInWords } from '../../circuit/index.ts';
import { copyState, type PlanLoad, type State, traceLoad, voltsAcross } from '../../solver/index.ts';
import { coilsOf, type History } from './history.ts';
import { pathText, stoppedWords, voltsText } from './wording.ts';

export interface Why {
  /** Goes on after `-K3 operates: `. */
  readonly text: string;
  /** Traces it was read from. */
  readonly traces: readonly LoadTrace[];
}

interface Coil {
  readonly load: PlanLoad;
  readonly volts: number;
  readonly trace: LoadTrace;
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
  return { load, volts, trace: history.trace(after, id)!, band };
}

const path = (history: History, coil: Coil): string => pathText(history, coil.trace);

function unfed(history: History, after: number, coil: Coil): Why {
  const { load, volts, trace, band } = coil;
  const { state } = history.stages[after]!;
  if (load.dead)
    return { text: 'its coil is burnt through, so it does nothing even with its voltage', traces: [trace] };
  if (trace.fed && band === 0)
    return {
      text: `its coil has only ${voltsText(volts)} of ${load.volts} V: ${path(history, coil)}`,
      traces: [trace],
    };
  return { text: stoppedWords(history, trace.stoppedBy, state), traces: [trace] };
}

function whyOperated(history: History, after: number, mechanism: number, coil: Coil): Why {
  const { state } = history.stages[after]!;
  const { drive, delays } = history.machine.plan.mechanisms[mechanism]!;
  const traces = [coil.trace];
  if (state.held[mechanism]) return { text: 'it is held energised by hand', traces: [] };
  if (coil.band > 0 && !coil.load.dead) {
    const timed = drive === 'on-delay' ? `, energised for its ${timeInWords(delays[0]!)}` : '';
    return { text: `${path(history, coil)}${timed}`, traces };
  }
  if (drive === 'latch')
    return { text: 'it is a latching relay and stays where its last pulse put it', traces: [] };
  if (drive === 'off-delay') {
    const why = unfed(history, after, coil);
    return {
      text: `its coil is off (${why.text}), but its ${timeInWords(delays[0]!)} are not over`,
      traces: why.traces,
    };
  }
  return { text: `its coil still has ${voltsText(coil.volts)}, which is enough to hold it`, traces };
}

function whyAtRest(history: History, after: number, mechanism: number, coil: Coil): Why {
  const { state } = history.stages[after]!;
  const { drive, delays, frozenAt } = history.machine.plan.mechanisms[mechanism]!;
  const traces = [coil.trace];
  if (frozenAt !== undefined) return { text: 'it is stuck at rest', traces: [] };
  if (coil.band > 0 && !coil.load.dead) {
    if (drive === 'on-delay' && state.due[mechanism] !== Infinity)
      return {
        text: `its coil is energised (${path(history, coil)}), but its ${timeInWords(delays[0]!)} are not over`,
        traces,
      };
    if (drive === 'latch') {
      const reset = coilAt(history, after, coilsOf(history, mechanism).at(-1)!);
      return { text: `its reset coil is fed as well: ${path(history, reset)}`, traces: [reset.trace] };
    }
  }
  if (drive === 'latch') {
    const reset = coilAt(history, after, coilsOf(history, mechanism).at(-1)!);
    if (reset.band > 0)
      return { text: `its reset coil is fed: ${path(history, reset)}`, traces: [reset.trace] };
    const why = unfed(history, after, coil);
    return { ...why, text: `nothing sets it now: ${why.text}` };
  }
  return unfed(history, after, coil);
}

/**
 * Why a relay has just operated or released: what came to its coil, or left it, while its own contacts still stood where
 * they were. A seal-in operates over its button, and releases because of what opened, not because of its own contact.
 */
export function whyMoved(history: History, after: number, mechanism: number): Why {
  const { machine, stages } = history;
  const why = whyRelay(history, after, mechanism);
  const coil = coilAt(history, after, coilsOf(history, mechanism)[0]!);
  if (why.traces[0] !== coil.trace) return why;
  const state = copyState(stages[after]!.state);
  const operated = state.at[mechanism] === 2;
  state.at[mechanism] = operated ? 1 : 2;
  const trace = traceLoad(machine, state, coil.load.id)!;
  if (trace.fed !== coil.trace.fed || (!trace.fed && trace.stoppedBy.length === 0)) return why;
  const words = (told: LoadTrace, at: State): string =>
    told.fed ? pathText(history, told) : stoppedWords(history, told.stoppedBy, at);
  const text = why.text.replace(words(coil.trace, stages[after]!.state), words(trace, state));
  return { text, traces: [trace] };
}

/** Why a mechanism that a coil moves stands where it stands after so many acts. */
export function whyRelay(history: History, after: number, mechanism: number): Why {
  const coil = coilAt(history, after, coilsOf(history, mechanism)[0]!);
  const operated = history.stages[after]!.state.at[mechanism] === 2;
  return operated ? whyOperated(history, after, mechanism, coil) : whyAtRest(history, after, mechanism, coil);
}
