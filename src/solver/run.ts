/**
 * One scenario in time, with the typical operate and release times: what somebody would see in slow motion. A coil must
 * keep its voltage (or lack it) for its time before the mechanism leaves; on its way all its contacts are open; once it
 * has left it arrives. Timers run on the same clock.
 */
import type { Act, Scenario } from '../../shared/scenario.ts';
import type { Happening } from '../../shared/solution.ts';
import { readAs } from '../circuit/anatomy/index.ts';
import { applyAct } from './acts.ts';
import { band } from './coils.ts';
import type { Machine } from './machine.ts';
import { inputStateAt, lampStateAt } from './readings.ts';
import { clearCandidates, consider, moved, nothingPending, update } from './settle.ts';
import { type State, startState } from './state.ts';
import { fireTimers, nextDue, postpone } from './time.ts';

export interface TimedRun {
  readonly happenings: readonly Happening[];
  /** Where everything stands at the end. */
  readonly state: State;
  /** False when an act was given up on because the circuit kept switching; a wait is then cut short in what it shows. */
  readonly rested: boolean;
}

/** Told after each moment at which something changed: the state then (not to be kept), and how much has happened so far. */
export type Watch = (state: State, happenings: number) => void;

/** Moments after which one act is taken to go on for ever, beyond two for each mechanism in a chain. */
const MOST_MOMENTS = 2_000;
/** Happenings of a whole scenario, beyond some for each mechanism; nothing more is shown then. */
const MOST_HAPPENINGS = 20_000;
/** Steps of evaluating, some seconds of them, after which nothing more is shown. */
const MOST_EFFORT = 80_000_000;
const SAME_MOMENT = 1e-9;

class Run {
  readonly machine: Machine;
  readonly state: State;
  readonly happenings: Happening[] = [];
  rested = true;
  private readonly pending = nothingPending();
  /** When a mechanism leaves or arrives, in seconds. */
  private readonly event: Float64Array;
  private readonly shown: string[];
  private trips = 0;
  private act = -1;
  private readonly most: number;
  private readonly effortBefore: number;
  private readonly watch: Watch | undefined;

  constructor(machine: Machine, start: Scenario['start'], watch: Watch | undefined) {
    this.machine = machine;
    this.watch = watch;
    this.state = startState(machine, start);
    this.event = new Float64Array(machine.mechanisms).fill(Infinity);
    this.shown = machine.plan.loads.map(({ role }) =>
      role === 'input' ? '0' : role === 'dirt' ? '' : 'off',
    );
    this.effortBefore = machine.effort.steps;
    this.most = MOST_HAPPENINGS + 8 * machine.mechanisms;
    this.pending.all = true;
    this.refresh();
    this.until(undefined);
  }

  private note(what: Happening['what'], device: string, to: string): void {
    const ms = Math.round(this.state.now * 1e6) / 1e3;
    this.happenings.push({ ms, act: this.act, what, device, to });
  }

  /** Voltages, then everything a person would see change, then which mechanisms set out. */
  private refresh(): void {
    const { machine, state } = this;
    update(machine, state, this.pending);
    clearCandidates(machine, this.pending);
    for (; this.trips < state.tripped.length; this.trips++) {
      this.note('trips', machine.plan.mechanisms[state.tripped[this.trips]!]!.id, 'open');
    }
    this.showLoads();
    for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) {
      const at = state.at[mechanism]!;
      if ((at & (at - 1)) !== 0) continue;
      if (at === state.goal[mechanism]) this.event[mechanism] = Infinity;
      else if (this.event[mechanism] === Infinity) this.event[mechanism] = state.now + this.lead(mechanism);
    }
    this.watch?.(state, this.happenings.length);
  }

  /** Seconds from the command until the contacts begin to move. */
  private lead(mechanism: number): number {
    const { speeds } = this.machine.plan.mechanisms[mechanism]!;
    const whole = this.state.goal[mechanism] === 1 ? speeds.releaseMs : speeds.operateMs;
    return Math.max(0, whole - speeds.travelMs) / 1000;
  }

  private showLoads(): void {
    const { machine, state, shown } = this;
    machine.plan.loads.forEach(({ role, id, mechanism }, load) => {
      if (role === 'dirt') return;
      const as = readAs(role);
      const coil = as === 'coil';
      const now = coil
        ? band(machine, state, load) > 0 || state.held[mechanism]
          ? 'on'
          : band(machine, state, load) < 0
            ? 'off'
            : shown[load]!
        : as === 'input'
          ? inputStateAt(machine, state, load)
          : lampStateAt(machine, state, load);
      const before = shown[load] === 'off' && !coil ? 'dark' : shown[load];
      shown[load] = now;
      if (now === before) return;
      if (coil)
        this.note(
          now === 'on' ? 'energised' : 'de-energised',
          id,
          now === 'on' ? 'energised' : 'de-energised',
        );
      else this.note(as === 'winding' ? 'load' : as, id, now);
    });
  }

  /** Everything that happens at the next moment; feeding devices move in one go. */
  private step(when: number): void {
    const { machine, state, event } = this;
    state.now = when;
    if (nextDue(state) <= when + SAME_MOMENT) fireTimers(machine, state, when);
    for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) {
      if (event[mechanism]! > when + SAME_MOMENT) continue;
      const { id, positions, drive, speeds } = machine.plan.mechanisms[mechanism]!;
      const at = state.at[mechanism]!;
      const goal = state.goal[mechanism]!;
      const travelling = (at & (at - 1)) !== 0;
      if (!travelling && drive !== 'feed') {
        state.heading[mechanism] = goal;
        state.at[mechanism] = at | goal;
        event[mechanism] = when + speeds.travelMs / 1000;
        this.note('leaves', id, positions[31 - Math.clz32(goal)]!);
      } else {
        state.at[mechanism] = travelling ? state.heading[mechanism]! : goal;
        event[mechanism] = Infinity;
        this.note('arrives', id, positions[31 - Math.clz32(state.at[mechanism]!)]!);
      }
      moved(machine, state, mechanism, this.pending);
    }
    this.refresh();
  }

  /** Runs until nothing moves (`end` undefined), or until a moment, timers included. */
  until(end: number | undefined): void {
    const most = MOST_MOMENTS + 2 * this.machine.mechanisms;
    for (let moments = 0; ; moments++) {
      let next = Infinity;
      for (const event of this.event) if (event < next) next = event;
      const when = Math.min(next, nextDue(this.state));
      if (end === undefined ? next === Infinity : when > end + SAME_MOMENT || when === Infinity) break;
      if (moments >= most || this.spent) {
        this.rested = false;
        // What is left of the wait passes without being looked at.
        if (end !== undefined) this.jump(end - this.state.now);
        break;
      }
      this.step(when);
    }
    if (end !== undefined && this.state.now < end) this.state.now = end;
  }

  private get spent(): boolean {
    return this.happenings.length >= this.most || this.machine.effort.steps - this.effortBefore > MOST_EFFORT;
  }

  private jump(seconds: number): void {
    if (seconds <= 0) return;
    postpone(this.state, seconds);
    for (let mechanism = 0; mechanism < this.event.length; mechanism++)
      this.event[mechanism] = this.event[mechanism]! + seconds;
  }

  do(act: Act, index: number, words: string): void {
    if (this.spent) {
      this.rested = false;
      return;
    }
    this.act = index;
    this.note('act', act.kind === 'wait' ? '' : 'device' in act ? act.device : act.supply, words);
    if (act.kind === 'wait') {
      this.until(this.state.now + act.seconds);
      this.until(undefined);
      return;
    }
    const effect = applyAct(this.machine, this.state, act);
    if (effect.supplies) this.pending.all = true;
    for (const mechanism of effect.mechanisms) consider(this.machine, mechanism, this.pending);
    this.refresh();
    this.until(undefined);
  }
}

/**
 * Runs a scenario in time.
 *
 * @param words - how an act is told in its happening
 * @param watch - for who wants to show each moment
 */
export function runTimed(
  machine: Machine,
  scenario: Pick<Scenario, 'start' | 'acts'>,
  words: (act: Act) => string = (act) => act.kind,
  watch?: Watch,
): TimedRun {
  const run = new Run(machine, scenario.start, watch);
  scenario.acts.forEach((act, index) => {
    run.do(act, index, words(act));
  });
  return { happenings: run.happenings, state: run.state, rested: run.rested };
}
