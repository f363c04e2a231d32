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

/**
 * Brings the commanded position of one coil-driven mechanism, and its timer, up to date with its coil. One that is held by hand
 * is operated whatever its coil does; `own` is where its coil, and its time, would have it.
 */
export function command(machine: Machine, state: State, mechanism: number): void {
  if (machine.drive[mechanism]! >= DRIVE.act || machine.frozen[mechanism]) return;
  const held = state.held[mechanism] === 1;
  ownCommand(machine, state, mechanism, held);
  state.goal[mechanism] = held ? OPERATED : state.own[mechanism]!;
}

/** When the first delay of a timer that starts now is over; what is left of it where it was interrupted and adds up. */
const dueFrom = (machine: Machine, { now, left }: State, mechanism: number): number =>
  now + (left?.[mechanism] || machine.plan.mechanisms[mechanism]!.delays[0]!);

/** A timer runs no more. Where it adds up, it is remembered what was left of its time. */
function interrupt(machine: Machine, { due, left, now }: State, mechanism: number): void {
  if (left && due[mechanism]! < Infinity && machine.plan.mechanisms[mechanism]!.addsUp)
    left[mechanism] = due[mechanism]! - now;
  due[mechanism] = Infinity;
}

function ownCommand(machine: Machine, state: State, mechanism: number, held: boolean): void {
  const { own, due } = state;
  const coil = band(machine, state, machine.coilOf[mechanism]!);
  switch (machine.drive[mechanism]) {
    case DRIVE.coil:
      if (coil !== 0) own[mechanism] = coil > 0 ? OPERATED : REST;
      // Between its limits a coil keeps what a hand has brought to it.
      else if (held) own[mechanism] = OPERATED;
      return;
    case DRIVE.latch: {
      const reset = band(machine, state, machine.secondOf[mechanism]!);
      if (coil > 0 && reset <= 0) own[mechanism] = OPERATED;
      else if (reset > 0 && coil <= 0) own[mechanism] = REST;
      else if (held) own[mechanism] = OPERATED;
      return;
    }
    case DRIVE['on-delay']:
      if (coil < 0) {
        own[mechanism] = REST;
        interrupt(machine, state, mechanism);
      } else if (coil > 0 && own[mechanism] === REST && due[mechanism] === Infinity)
        due[mechanism] = dueFrom(machine, state, mechanism);
      return;
    case DRIVE['supplied-off-delay']: {
      const supplied = band(machine, state, machine.secondOf[mechanism]!);
      if (supplied < 0) {
        own[mechanism] = REST;
        due[mechanism] = Infinity;
      } else if (supplied > 0 || own[mechanism] === OPERATED) releaseLate(machine, state, mechanism, coil);
      return;
    }
    case DRIVE['off-delay']:
      releaseLate(machine, state, mechanism, coil);
      return;
    case DRIVE.flasher:
      if (coil < 0) {
        own[mechanism] = REST;
        due[mechanism] = Infinity;
      } else if (coil > 0 && due[mechanism] === Infinity) {
        own[mechanism] = OPERATED;
        due[mechanism] = dueFrom(machine, state, mechanism);
      }
      return;
  }
}

/** Operates at once; its time runs from when its coil, or control input, has lost its voltage. */
function releaseLate(machine: Machine, state: State, mechanism: number, coil: -1 | 0 | 1): void {
  const { own, due } = state;
  if (coil > 0) {
    own[mechanism] = OPERATED;
    interrupt(machine, state, mechanism);
  } else if (coil < 0 && own[mechanism] === OPERATED && due[mechanism] === Infinity)
    due[mechanism] = dueFrom(machine, state, mechanism);
}

/** A timer that is due changes its command; a flasher starts on its next span. */
export function timeOut(machine: Machine, state: State, mechanism: number): void {
  const { own, due, left } = state;
  if (left) left[mechanism] = 0;
  switch (machine.drive[mechanism]) {
    case DRIVE['on-delay']:
      own[mechanism] = OPERATED;
      due[mechanism] = Infinity;
      break;
    case DRIVE['off-delay']:
    case DRIVE['supplied-off-delay']:
      own[mechanism] = REST;
      due[mechanism] = Infinity;
      break;
    case DRIVE.flasher: {
      const [on = 1, off = 1] = machine.plan.mechanisms[mechanism]!.delays;
      const operated = own[mechanism] === OPERATED;
      own[mechanism] = operated ? REST : OPERATED;
      due[mechanism] = due[mechanism]! + (operated ? off : on);
      break;
    }
  }
  if (!state.held[mechanism]) state.goal[mechanism] = own[mechanism]!;
}
