/** A rule of practice that has to be solved: what a stop stops doesn't run while the stop is actuated. */
import type { Circuit, Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { actSaid, type DrawingRule, traitsOf } from '../circuit/index.ts';
import { actsToTry } from './acts-to-try.ts';
import { withoutDeadEnds } from './dead-ends.ts';
import { DRIVE, type Machine, machineOf } from './machine.ts';
import { planOf } from './plan-of.ts';
import { begin, doAct } from './play.ts';
import { copyState, type State } from './state.ts';

/** States looked at; a plant with more than that many of its buttons and field contacts is searched in part. */
const MOST_STATES = 400;

const PRESSED = 2;
const OPERATED = 2;
const REST = 1;

/** A stop and a relay or contactor that it has to do with, as one number. */
type Pair = number;

interface Running {
  readonly stop: string;
  readonly mover: string;
  readonly acts: readonly Act[];
}

const keyOf = ({ at, due }: State): string =>
  `${at.join('')} ${due.map((when) => (when === Infinity ? 0 : 1)).join('')}`;

/** What the search through the states of a plant has come across. */
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
    this.movers = machine.plan.mechanisms.flatMap((_, index) =>
      machine.drive[index] === DRIVE.coil ? [index] : [],
    );
  }

  look(before: State, after: State, acts: readonly Act[]): void {
    const { mechanisms } = this.machine.plan;
    for (const stop of this.stops) {
      if (after.at[stop] !== PRESSED) continue;
      const pressedNow = before.at[stop] !== PRESSED;
      for (const mover of this.movers) {
        const pair = stop * mechanisms.length + mover;
        if (pressedNow && before.at[mover] === OPERATED && after.at[mover] === REST) this.stopped.add(pair);
        if (after.at[mover] !== OPERATED || this.ran.has(pair)) continue;
        this.ran.set(pair, { stop: mechanisms[stop]!.id, mover: mechanisms[mover]!.id, acts });
      }
    }
  }

  /** What a stop puts out at one time and not at another. */
  get found(): readonly Running[] {
    return [...this.ran].flatMap(([pair, running]) => (this.stopped.has(pair) ? [running] : []));
  }
}

function search(circuit: Circuit, stops: readonly Device[]): readonly Running[] {
  const machine = machineOf(withoutDeadEnds(planOf(circuit)));
  const seen = new Seen(
    machine,
    stops.map(({ name }) => machine.mechanismOf.get(name)!),
  );
  const acts = actsToTry(circuit, machine);
  const start = begin(machine, 'live');
  const queue: { state: State; done: Act[] }[] = [{ state: start, done: [] }];
  const known = new Set([keyOf(start)]);
  for (const { state, done } of queue) {
    for (const act of acts) {
      const next = copyState(state);
      // What never rests tells nothing about the stop.
      if (!doAct(machine, next, act)) continue;
      const now = [...done, act];
      seen.look(state, next, now);
      const key = keyOf(next);
      if (known.has(key) || known.size >= MOST_STATES) continue;
      known.add(key);
      queue.push({ state: next, done: now });
    }
  }
  return seen.found;
}

/**
 * A stop that puts a relay or contactor out at one time, and while it is actuated lets it operate at another: by a jog button
 * that leads past it, or a start that is stronger. Searched breadth first over what can be done, mechanisms moving in waves,
 * over at most 400 states.
 */
export const stopWins: DrawingRule = {
  name: 'stop-wins',
  source: 'IEC 60204-1, 9.2: stop functions override the start functions that belong to them (from memory)',
  check(circuit) {
    const stops = circuit.devices.filter((device) => traitsOf(device).stops?.(device));
    if (stops.length === 0) return [];
    return search(circuit, stops).map(({ stop, mover, acts }) => ({
      said: { says: 'stop-wins', stop, mover, acts: acts.map((act) => actSaid(act, circuit)) },
      concern: { kind: 'circuit' },
    }));
  },
};
