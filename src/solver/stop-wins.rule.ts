/** A rule of practice that has to be solved: what a stop stops doesn't run while the stop is actuated. */
import type { Circuit, Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { actSaid, type DrawingRule, traitsOf } from '../circuit/index.ts';
import { actsToTry } from './acts-to-try.ts';
import type { Machine } from './machine.ts';
import { moversOf } from './movers.ts';
import { plantOf } from './plant.ts';
import { OPERATED, REST, type Taken, walkPlant } from './plant-walk.ts';
import { whereFed } from './where-fed.ts';

/** A stop and a relay or contactor that it has to do with, as one number. */
type Pair = number;

interface Running {
  readonly stop: string;
  readonly mover: string;
  readonly acts: readonly Act[];
}

/** What the walk through the states of a plant has come across. */
class Seen {
  /** Pairs of which the stop has put the relay out, and by which acts it ran although the stop was actuated. */
  private readonly stopped = new Set<Pair>();
  private readonly ran = new Map<Pair, Running>();
  private readonly machine: Machine;
  private readonly stops: readonly number[];
  private readonly movers: readonly number[];

  constructor(machine: Machine, stops: readonly number[]) {
    this.machine = machine;
    this.stops = stops;
    this.movers = moversOf(machine);
  }

  look({ before, after, done }: Taken): void {
    const { mechanisms } = this.machine.plan;
    for (const stop of this.stops) {
      if (after.at[stop] !== OPERATED) continue;
      const pressedNow = before.at[stop] !== OPERATED;
      for (const mover of this.movers) {
        const pair = stop * mechanisms.length + mover;
        if (pressedNow && before.at[mover] === OPERATED && after.at[mover] === REST) this.stopped.add(pair);
        if (after.at[mover] !== OPERATED || this.ran.has(pair)) continue;
        this.ran.set(pair, { stop: mechanisms[stop]!.id, mover: mechanisms[mover]!.id, acts: done });
      }
    }
  }

  /** What a stop puts out at one time and not at another. */
  get found(): readonly Running[] {
    return [...this.ran].flatMap(([pair, running]) => (this.stopped.has(pair) ? [running] : []));
  }
}

function search(circuit: Circuit, stops: readonly Device[]): readonly Running[] {
  const plant = plantOf(circuit);
  const { machine } = plant;
  const seen = new Seen(
    machine,
    stops.map(({ name }) => machine.mechanismOf.get(name)!),
  );
  const moves = actsToTry(circuit, machine).map((act) => [act]);
  walkPlant(plant, moves, (taken) => seen.look(taken));
  return seen.found;
}

/**
 * A stop that puts a relay or contactor out at one time, and while it is actuated lets it operate at another: by a jog button
 * that leads past it, or a start that is stronger.
 */
export const stopWins: DrawingRule = {
  name: 'stop-wins',
  check(circuit) {
    const stops = circuit.devices.filter((device) => traitsOf(device).stops?.(device));
    if (stops.length === 0) return [];
    return search(circuit, stops).map(({ stop, mover, acts }) => ({
      said: { says: 'stop-wins', stop, mover, acts: acts.map((act) => actSaid(act, circuit)) },
      concern: whereFed(circuit, mover),
    }));
  },
};
