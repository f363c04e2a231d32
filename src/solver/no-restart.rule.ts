/** A rule of practice that has to be solved: what a button has started doesn't start by itself when the supply comes back. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { actSaid, actsOn, type DrawingRule, traitsOf } from '../circuit/index.ts';
import { actsToTry } from './acts-to-try.ts';
import type { Machine } from './machine.ts';
import { moversOf } from './movers.ts';
import type { Plan } from './plan.ts';
import { planOf } from './plan-of.ts';
import { plantOf } from './plant.ts';
import { afterAll, OPERATED, REST, type Taken, walkPlant } from './plant-walk.ts';
import type { State } from './state.ts';
import { whereFed } from './where-fed.ts';

/**
 * Whether anything outlasts a loss: a latching relay, a contact that releases late, or a relay on a supply that isn't lost.
 * Where nothing does, every relay is at rest when the supply returns, as it was when the plant was first switched on.
 */
const remembers = ({ mechanisms, supplies }: Plan): boolean =>
  supplies.length > 1 || mechanisms.some(({ drive }) => drive === 'latch' || drive === 'off-delay');

/** Buttons that spring back, pressed and let go; whatever else can be done, one by one. */
function movesIn(circuit: Circuit, machine: Machine): { readonly pulses: Act[][]; readonly others: Act[][] } {
  const buttons = circuit.devices.filter((device) => traitsOf(device).momentary);
  const pulses = buttons.map((device) => actsOn(device) as Act[]);
  const pressed = new Set(pulses.flat().map((act) => JSON.stringify(act)));
  const others = actsToTry(circuit, machine).filter((act) => !pressed.has(JSON.stringify(act)));
  return { pulses, others: others.map((act) => [act]) };
}

/** All supplies lost at once, and each alone; then back again. */
function lossesOf({ supplies }: Plan): { readonly lost: Act[]; readonly back: Act[] }[] {
  const names = supplies.map(({ name }) => name);
  const losses = names.length > 1 ? [names, ...names.map((name) => [name])] : [names];
  return losses.map((gone) => ({
    lost: gone.map((supply): Act => ({ kind: 'fail', supply })),
    back: gone.map((supply): Act => ({ kind: 'restore', supply })),
  }));
}

interface Restarted {
  readonly mover: string;
  readonly acts: readonly Act[];
}

class Restarts {
  readonly found = new Map<number, Restarted>();
  private readonly machine: Machine;
  private readonly movers: readonly number[];
  private readonly losses: ReturnType<typeof lossesOf>;
  private readonly pressed: ReadonlySet<Act>;

  constructor(machine: Machine, pulses: readonly (readonly Act[])[]) {
    this.machine = machine;
    this.movers = moversOf(machine);
    this.losses = lossesOf(machine.plan);
    this.pressed = new Set(pulses.flatMap((pulse) => pulse.slice(-1)));
  }

  /** Whether it is at rest while the supply is lost and operates when it is back. */
  private comesBack(state: State, mover: number, { lost, back }: Restarts['losses'][number]): boolean {
    const without = afterAll(this.machine, state, lost);
    if (without?.at[mover] !== REST) return false;
    return afterAll(this.machine, without, back)?.at[mover] === OPERATED;
  }

  look({ before, after, done }: Taken): void {
    if (!this.pressed.has(done.at(-1)!)) return;
    // A button that only changes over from one running machine to another chooses; what runs, runs because it is wanted.
    if (this.movers.some((other) => before.at[other] === OPERATED && after.at[other] === REST)) return;
    for (const mover of this.movers) {
      if (before.at[mover] !== REST || after.at[mover] !== OPERATED || this.found.has(mover)) continue;
      const loss = this.losses.find(
        (each) => this.comesBack(after, mover, each) && !this.comesBack(before, mover, each),
      );
      if (!loss) continue;
      const { id } = this.machine.plan.mechanisms[mover]!;
      this.found.set(mover, { mover: id, acts: [...done, ...loss.lost, ...loss.back] });
    }
  }
}

/**
 * A relay or contactor that a button has started, which was let go again, and that comes back by itself with a supply that was
 * lost. What the plant or a selector starts isn't held to it: a level, a temperature or a switch that stays where it was turned
 * starts when it is there, and nobody relies on its standing still (the exception that 7.5 makes where no hazard follows).
 */
export const noRestart: DrawingRule = {
  name: 'no-restart',
  check(circuit) {
    if (!circuit.devices.some((device) => traitsOf(device).momentary) || !remembers(planOf(circuit)))
      return [];
    const plant = plantOf(circuit);
    const { machine } = plant;
    const { pulses, others } = movesIn(circuit, machine);
    const restarts = new Restarts(machine, pulses);
    walkPlant(plant, [...pulses, ...others], (taken) => restarts.look(taken));
    return [...restarts.found.values()].map(({ mover, acts }) => ({
      said: { says: 'no-restart', mover, acts: acts.map((act) => actSaid(act, circuit)) },
      concern: whereFed(circuit, mover),
    }));
  },
};
