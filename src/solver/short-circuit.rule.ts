/** A drawing rule that has to be solved: no short circuit in any state that somebody can bring about. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { actSaid, type CircuitView, type Concern, type DrawingRule } from '../circuit/index.ts';
import { Joining } from '../graph/index.ts';
import { actsToTry } from './acts-to-try.ts';
import { type Machine, machineOf } from './machine.ts';
import { everyBeginning, everyOutcome, type Standing } from './outcomes.ts';
import type { Plan } from './plan.ts';
import { planOf } from './plan-of.ts';
import type { State } from './state.ts';

/** Standings looked at; a plant with more than that many states of its buttons and field contacts is searched in part. */
const MOST_STANDINGS = 400;
const LIMITS = { states: 2_000, work: 2_000_000 };

/** Whether two poles of a supply would be joined if every contact were closed: if not, no state has a short circuit. */
function couldShort({ nodes, joins, switches, supplies }: Plan): boolean {
  const joining = new Joining(nodes);
  for (const [a, b] of joins) joining.join(a, b);
  for (const { a, b } of switches) joining.join(a, b);
  return supplies.some(
    ({ poles }) => new Set(poles.map(({ node }) => joining.find(node))).size < poles.length,
  );
}

/** A state in which something has tripped, or a supply is short-circuited. */
const shortIn = ({ endings }: Standing): State | undefined =>
  endings.flatMap(({ states }) => states).find(({ tripped, shorted }) => tripped.length + shorted.length > 0);

/** What opens, where something does; else the supply. */
function placeOfShort(circuit: Circuit, { mechanisms }: Plan, { tripped, shorted }: State): Concern {
  const [opened] = tripped;
  if (opened === undefined) return { kind: 'supply', index: shorted[0]! };
  const index = circuit.devices.findIndex(({ name }) => name === mechanisms[opened]!.device);
  return { kind: 'device', index };
}

const keyOf = ({ endings }: Standing): string =>
  endings
    .map(({ states }) =>
      states
        .map(({ at, goal }) => `${at.join('')}/${goal.join('')}`)
        .sort()
        .join('|'),
    )
    .sort()
    .join(' ');

interface Shorted {
  readonly acts: readonly Act[];
  readonly state: State;
}

/** The shortest list of acts after which something has tripped, in any order of operation; undefined when none is found. */
function findShort(machine: Machine, circuit: Circuit): Shorted | undefined {
  const acts = actsToTry(circuit, machine);
  const start = everyBeginning(machine, 'live', LIMITS);
  const atOnce = shortIn(start);
  if (atOnce) return { acts: [], state: atOnce };
  const queue: { standing: Standing; done: Act[] }[] = [{ standing: start, done: [] }];
  const seen = new Set([keyOf(start)]);
  for (const { standing, done } of queue) {
    for (const act of acts) {
      const next = everyOutcome(machine, standing, act, LIMITS);
      const state = shortIn(next);
      if (state) return { acts: [...done, act], state };
      const key = keyOf(next);
      if (seen.has(key) || seen.size >= MOST_STANDINGS) continue;
      seen.add(key);
      queue.push({ standing: next, done: [...done, act] });
    }
  }
  return undefined;
}

/**
 * No short circuit in a reachable state. Searched breadth first over what can be done (buttons, selectors, field contacts,
 * overloads, outputs, timers), in every order of operation, over at most 400 standings; a circuit in which closed
 * contacts could never join two poles isn't searched at all.
 */
export const shortCircuit: DrawingRule = {
  name: 'short-circuit',
  check(circuit: Circuit, _view: CircuitView) {
    const plan = planOf(circuit);
    if (!couldShort(plan)) return [];
    const found = findShort(machineOf(plan), circuit);
    if (!found) return [];
    const { acts, state } = found;
    return [
      {
        said:
          acts.length === 0
            ? { says: 'short-circuit.atOnce' }
            : { says: 'short-circuit', acts: acts.map((act) => actSaid(act, circuit)) },
        concern: placeOfShort(circuit, plan, state),
      },
    ];
  },
};
