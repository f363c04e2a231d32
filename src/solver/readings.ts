import type { CoilReading, InputState, LampState } from '../../shared/solution.ts';
import { readAs } from '../circuit/anatomy/index.ts';
import { DARK_BELOW, LIT_FROM } from '../circuit/standards.ts';
import { partsOfVolts } from './axes.ts';
import { band, voltsAcross } from './coils.ts';
import type { Machine } from './machine.ts';
import type { State } from './state.ts';

/** What can be read off a state: everything the questions ask about. */
export interface Readings {
  readonly coils: Readonly<Record<string, CoilReading>>;
  readonly lamps: Readonly<Record<string, LampState>>;
  readonly loads: Readonly<Record<string, LampState>>;
  readonly inputs: Readonly<Record<string, InputState>>;
  readonly volts: Readonly<Record<string, number>>;
}

const SLACK = 1e-9;

/** Volts below this are rounding. */
const NOTHING = 1e-6;

/** Direct volts from the `from` to the `to` terminal of a load, and the r.m.s. value of what alternates across it. */
export const voltsOf = ({ axes }: Machine, { volts }: State, load: number) =>
  partsOfVolts(axes, (axis) => volts[axis]![load]!, axes.count);

/** lit, dim or dark from the voltage against the rated one; a burnt-out lamp is dark. */
export function lampStateAt(machine: Machine, state: State, load: number): LampState {
  const { volts, dead } = machine.plan.loads[load]!;
  const share = dead ? 0 : voltsAcross(state, load) / volts;
  // Rounding must not decide at a limit: at just 80 % a lamp is lit, at just 10 % it is dim.
  if (share >= LIT_FROM - SLACK) return 'lit';
  return share < DARK_BELOW - SLACK ? 'dark' : 'dim';
}

/**
 * 0, 1 or undefined by the input's bands, which are of direct voltage from the input to its common: a reversed one is no 1.
 * An alternating voltage swings by its peak about the direct one; where it doesn't stay within one band all the time,
 * what the input makes of it isn't defined.
 */
export function inputStateAt(machine: Machine, state: State, load: number): InputState {
  const { bands, inverted, dead } = machine.plan.loads[load]!;
  const { direct, alternating } = dead ? { direct: 0, alternating: 0 } : voltsOf(machine, state, load);
  const swing = Math.SQRT2 * alternating;
  const read =
    direct - swing >= bands!.oneFrom - SLACK
      ? '1'
      : direct + swing <= bands!.zeroUpTo + SLACK
        ? '0'
        : 'undefined';
  if (!inverted || read === 'undefined') return read;
  return read === '1' ? '0' : '1';
}

const BANDS = ['releases', 'between', 'operates'] as const;

function coilAt(machine: Machine, state: State, load: number): CoilReading {
  const { mechanism } = machine.plan.loads[load]!;
  const held = state.held[mechanism] === 1;
  const at = band(machine, state, load);
  return {
    operated: state.at[mechanism] === 2,
    energised: at > 0 || held,
    band: held ? 'operates' : BANDS[at + 1]!,
    volts: voltsAcross(state, load),
  };
}

const tidy = (volts: number): number => Math.round(volts * 1e6) / 1e6;

/** Reads a settled state; volts are rounded to a microvolt. */
export function readState(machine: Machine, state: State): Readings {
  const coils: Record<string, CoilReading> = {};
  const lamps: Record<string, LampState> = {};
  const loads: Record<string, LampState> = {};
  const inputs: Record<string, InputState> = {};
  const volts: Record<string, number> = {};
  machine.plan.loads.forEach((load, index) => {
    if (load.role === 'dirt') return;
    const { direct, alternating } = voltsOf(machine, state, index);
    volts[`${load.device}:${load.from}-${load.to}`] = tidy(
      alternating < NOTHING ? direct : Math.hypot(direct, alternating),
    );
    switch (readAs(load.role)) {
      case 'coil':
        coils[load.id] = coilAt(machine, state, index);
        coils[load.id] = { ...coils[load.id]!, volts: tidy(coils[load.id]!.volts) };
        return;
      case 'lamp':
        lamps[load.id] = lampStateAt(machine, state, index);
        return;
      case 'input':
        inputs[load.id] = inputStateAt(machine, state, index);
        return;
      case 'load':
        loads[load.id] = lampStateAt(machine, state, index);
        return;
      case 'winding': {
        // A motor runs only when all its windings have their voltage; the worst winding tells.
        const order = ['dark', 'dim', 'lit'] as const;
        const now = lampStateAt(machine, state, index) as (typeof order)[number];
        const before = loads[load.device] as (typeof order)[number] | undefined;
        loads[load.device] =
          before === undefined ? now : order[Math.min(order.indexOf(before), order.indexOf(now))]!;
        return;
      }
    }
  });
  return { coils, lamps, loads, inputs, volts };
}
