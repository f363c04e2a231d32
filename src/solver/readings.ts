import type { CoilReading, InputState, LampState } from '../../shared/solution.ts';
import { DARK_BELOW, LIT_FROM } from '../circuit/standards.ts';
import { band, magnitude } from './coils.ts';
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

/** lit, dim or dark from the voltage against the rated one; a burnt-out lamp is dark. */
export function lampStateAt(machine: Machine, state: State, load: number): LampState {
  const { volts, dead } = machine.plan.loads[load]!;
  const share = dead ? 0 : magnitude(machine, state, load) / volts;
  if (share >= LIT_FROM - 1e-9) return 'lit';
  return share < DARK_BELOW ? 'dark' : 'dim';
}

/** 0, 1 or undefined by the input's bands. A reversed voltage is no 1. */
export function inputStateAt(machine: Machine, state: State, load: number): InputState {
  const { bands, inverted, dead } = machine.plan.loads[load]!;
  const volts = dead ? 0 : machine.phases ? magnitude(machine, state, load) : state.re[load]!;
  const read = volts >= bands!.oneFrom - 1e-9 ? '1' : volts <= bands!.zeroUpTo + 1e-9 ? '0' : 'undefined';
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
    volts: magnitude(machine, state, load),
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
    const across = machine.phases ? magnitude(machine, state, index) : state.re[index]!;
    volts[`${load.device}:${load.from}-${load.to}`] = tidy(across);
    switch (load.role) {
      case 'coil':
      case 'set':
      case 'reset':
        coils[load.id] = coilAt(machine, state, index);
        coils[load.id] = { ...coils[load.id]!, volts: tidy(coils[load.id]!.volts) };
        return;
      case 'lamp':
        lamps[load.id] = lampStateAt(machine, state, index);
        return;
      case 'input':
        inputs[load.id] = inputStateAt(machine, state, index);
        return;
      case 'sounder':
      case 'valve':
        loads[load.id] = lampStateAt(machine, state, index);
        return;
      case 'motor': {
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
