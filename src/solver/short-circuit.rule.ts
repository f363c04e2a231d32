/** A drawing rule that has to be solved: no short circuit in any state that somebody can bring about. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { actSaid, type CircuitView, type DrawingRule } from '../circuit/index.ts';
import { Joining } from '../graph/index.ts';
import { actsToTry } from './acts-to-try.ts';
import { type Machine, machineOf } from './machine.ts';
import { everyBeginning, everyOutcome, type Standing } from './outcomes.ts';
import type { Plan } from './plan.ts';
import { planOf } from './plan-of.ts';

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

const shortIn = ({ endings }: Standing): boolean =>
  endings.some(({ states }) => states.some(({ tripped, shorted }) => tripped.length + shorted.length > 0));

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

/** The shortest list of acts after which something has tripped, in any order of operation; undefined when none is found. */
function actsToShort(machine: Machine, circuit: Circuit): Act[] | undefined {
  const acts = actsToTry(circuit, machine);
  const start = everyBeginning(machine, 'live', LIMITS);
  if (shortIn(start)) return [];
  const queue: { standing: Standing; done: Act[] }[] = [{ standing: start, done: [] }];
  const seen = new Set([keyOf(start)]);
  for (const { standing, done } of queue) {
    for (const act of acts) {
      const next = everyOutcome(machine, standing, act, LIMITS);
      if (shortIn(next)) return [...done, act];
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
    const acts = actsToShort(machineOf(plan), circuit);
    if (!acts) return [];
    return [
      {
        said:
          acts.length === 0
            ? { says: 'short-circuit.atOnce' }
            : { says: 'short-circuit', acts: acts.map((act) => actSaid(act, circuit)) },
        concern: { kind: 'circuit' },
      },
    ];
  },
};
