import type { Act } from '../../shared/scenario.ts';
import type { Machine } from './machine.ts';
import type { State } from './state.ts';

/** What an act changes: mechanisms commanded elsewhere, or everything (a supply). */
export interface Effect {
  readonly mechanisms: readonly number[];
  readonly supplies: boolean;
}

const NOTHING: Effect = { mechanisms: [], supplies: false };

/** Position of a two-position mechanism in which its first contact, or its fuse or isolator, is closed. */
function closedPosition(machine: Machine, mechanism: number): number {
  const first = machine.plan.switches.find((part) => part.mechanism === mechanism);
  return first?.closedIn[0] ?? 1;
}

function go(machine: Machine, state: State, id: string, position: (mechanism: number) => number): Effect {
  const mechanism = machine.mechanismOf.get(id);
  if (mechanism === undefined || machine.frozen[mechanism]) return NOTHING;
  const at = position(mechanism);
  if (at < 0) return NOTHING;
  state.goal[mechanism] = 1 << at;
  return { mechanisms: [mechanism], supplies: false };
}

function hold(machine: Machine, state: State, id: string, held: 0 | 1): Effect {
  const mechanism = machine.mechanismOf.get(id);
  if (mechanism === undefined) return NOTHING;
  state.held[mechanism] = held;
  return { mechanisms: [mechanism], supplies: false };
}

function supply(machine: Machine, state: State, name: string, on: 0 | 1): Effect {
  const index = machine.plan.supplies.findIndex((entry) => entry.name === name);
  if (index < 0) return NOTHING;
  state.supplyOn[index] = on;
  return { mechanisms: [], supplies: true };
}

/** Commands what an act moves; nothing is settled yet. `wait` has no effect here: see time.ts. */
export function applyAct(machine: Machine, state: State, act: Act): Effect {
  switch (act.kind) {
    case 'press':
      return go(machine, state, act.device, () => 1);
    case 'release':
      return go(machine, state, act.device, () => 0);
    case 'turn':
      return go(machine, state, act.device, (mechanism) =>
        machine.plan.mechanisms[mechanism]!.positions.indexOf(act.to),
      );
    case 'make':
      return go(machine, state, act.device, (mechanism) => makePosition(machine, mechanism));
    case 'break':
      return go(machine, state, act.device, (mechanism) => 1 - makePosition(machine, mechanism));
    case 'close':
      return go(machine, state, act.device, (mechanism) => closedPosition(machine, mechanism));
    case 'open':
      return go(machine, state, act.device, (mechanism) => 1 - closedPosition(machine, mechanism));
    case 'trip':
      return go(machine, state, act.device, () => 1);
    case 'reset':
      return go(machine, state, act.device, () => 0);
    case 'on':
      return go(machine, state, `${act.device}:${act.point}`, () => 1);
    case 'off':
      return go(machine, state, `${act.device}:${act.point}`, () => 0);
    case 'hold':
      return hold(machine, state, act.device, 1);
    case 'free':
      return hold(machine, state, act.device, 0);
    case 'fail':
      return supply(machine, state, act.supply, 0);
    case 'restore':
      return supply(machine, state, act.supply, 1);
    case 'wait':
      return NOTHING;
  }
}

/** A field contact "makes" when its first contact does; a changeover when its make leg does. */
function makePosition(machine: Machine, mechanism: number): number {
  const first = machine.plan.switches.find((part) => part.mechanism === mechanism);
  return first && first.form === 'break' && !first.changeover ? 0 : 1;
}
