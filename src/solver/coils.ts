/** What a coil commands, from its voltage and its limits; timers start and stop here. */
import { lengthAt } from './axes.ts';
import { DRIVE, type Machine } from './machine.ts';
import type { State } from './state.ts';

const REST = 1;
const OPERATED = 2;

/** Volts r.m.s. across a load, without sign: what a coil or a lamp has, whatever the kind of current. */
export const voltsAcross = (state: State, load: number): number => lengthAt(state.volts, load);

/** Rounding in the network must not decide at a limit. */
const SLACK = 1e-9;

/** 1: it has the voltage to operate; -1: to release; 0: between the limits, so it stays as it is. */
export function band(machine: Machine, state: State, load: number): -1 | 0 | 1 {
  if (load < 0) return -1;
  const volts = voltsAcross(state, load);
  if (volts >= machine.operateVolts[load]! * (1 - SLACK)) return 1;
  return volts <= machine.releaseVolts[load]! * (1 + SLACK) ? -1 : 0;
}

/** Brings the commanded position of one coil-driven mechanism, and its timer, up to date with its coil. */
export function command(machine: Machine, state: State, mechanism: number): void {
  const drive = machine.drive[mechanism]!;
  if (drive >= DRIVE.act) return;
  const { goal, due } = state;
  if (machine.frozen[mechanism]) return;
  if (state.held[mechanism]) {
    goal[mechanism] = OPERATED;
    due[mechanism] = Infinity;
    return;
  }
  const coil = band(machine, state, machine.coilOf[mechanism]!);
  switch (drive) {
    case DRIVE.coil:
      if (coil !== 0) goal[mechanism] = coil > 0 ? OPERATED : REST;
      return;
    case DRIVE.latch: {
      const reset = band(machine, state, machine.resetOf[mechanism]!);
      if (coil > 0 && reset <= 0) goal[mechanism] = OPERATED;
      else if (reset > 0 && coil <= 0) goal[mechanism] = REST;
      return;
    }
    case DRIVE['on-delay']:
      if (coil < 0) {
        goal[mechanism] = REST;
        due[mechanism] = Infinity;
      } else if (coil > 0 && goal[mechanism] === REST && due[mechanism] === Infinity) {
        due[mechanism] = state.now + machine.plan.mechanisms[mechanism]!.delays[0]!;
      }
      return;
    case DRIVE['off-delay']:
      if (coil > 0) {
        goal[mechanism] = OPERATED;
        due[mechanism] = Infinity;
      } else if (coil < 0 && goal[mechanism] === OPERATED && due[mechanism] === Infinity) {
        due[mechanism] = state.now + machine.plan.mechanisms[mechanism]!.delays[0]!;
      }
      return;
    case DRIVE.flasher:
      if (coil < 0) {
        goal[mechanism] = REST;
        due[mechanism] = Infinity;
      } else if (coil > 0 && due[mechanism] === Infinity) {
        goal[mechanism] = OPERATED;
        due[mechanism] = state.now + machine.plan.mechanisms[mechanism]!.delays[0]!;
      }
      return;
  }
}

/** A timer that is due changes its command; a flasher starts on its next span. */
export function timeOut(machine: Machine, state: State, mechanism: number): void {
  const { goal, due } = state;
  switch (machine.drive[mechanism]) {
    case DRIVE['on-delay']:
      goal[mechanism] = OPERATED;
      due[mechanism] = Infinity;
      return;
    case DRIVE['off-delay']:
      goal[mechanism] = REST;
      due[mechanism] = Infinity;
      return;
    case DRIVE.flasher: {
      const [on = 1, off = 1] = machine.plan.mechanisms[mechanism]!.delays;
      const operated = goal[mechanism] === OPERATED;
      goal[mechanism] = operated ? REST : OPERATED;
      due[mechanism] = due[mechanism]! + (operated ? off : on);
      return;
    }
  }
}
