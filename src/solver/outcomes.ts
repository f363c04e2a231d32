import type { Act, Scenario } from '../../shared/scenario.ts';
import { applyAct } from './acts.ts';
import type { Ending } from './endings.ts';
import { EXPLORE_LIMITS, type ExploreLimits, explore } from './explore.ts';
import { DRIVE, type Machine } from './machine.ts';
import { copyState, type State, startState } from './state.ts';
import { fireTimers, nextDue } from './time.ts';

/** How a scenario can stand after some of its acts: one way, or one of several. */
export interface Standing {
  readonly endings: readonly Ending[];
  /** False when not every order could be tried. */
  readonly complete: boolean;
}

/** Ways carried from one act to the next; beyond it the standing is called incomplete. */
const MOST_WAYS = 64;

const stateKey = (state: State): string => {
  const due = [...state.due].map((when) => (when === Infinity ? '-' : (when - state.now).toFixed(6))).join();
  return `${state.at.join('')} ${state.goal.join('')} ${state.held.join('')} ${state.supplyOn.join('')} ${due}`;
};

/** The same ending reached by several ways counts once. */
function distinct(endings: readonly Ending[]): Ending[] {
  if (endings.length < 2) return [...endings];
  const seen = new Map<string, Ending>();
  for (const ending of endings) seen.set(ending.states.map(stateKey).sort().join('|'), ending);
  return [...seen.values()];
}

function collect(standings: readonly Standing[]): Standing {
  const endings = distinct(standings.flatMap((standing) => standing.endings));
  const complete = standings.every((standing) => standing.complete);
  if (endings.length <= MOST_WAYS) return { endings, complete };
  return { endings: endings.slice(0, MOST_WAYS), complete: false };
}

/** A circuit that never rests may be anywhere when the next act comes. */
const statesOf = ({ endings }: Standing): readonly State[] =>
  endings.flatMap(({ states }) => states).slice(0, 4 * MOST_WAYS);

/** The start of a scenario, settled in every order. */
export function everyBeginning(
  machine: Machine,
  start: Scenario['start'],
  limits: ExploreLimits = EXPLORE_LIMITS,
): Standing {
  const { endings, complete } = explore(machine, startState(machine, start), 'all', limits);
  return { endings: distinct(endings), complete };
}

/** One act done in every order from every way the circuit can stand. */
export function everyOutcome(
  machine: Machine,
  standing: Standing,
  act: Act,
  limits: ExploreLimits = EXPLORE_LIMITS,
): Standing {
  const before = statesOf(standing);
  const after = collect(
    before.map((state) =>
      act.kind === 'wait'
        ? waitInEveryOrder(machine, state, act.seconds, limits)
        : actInEveryOrder(machine, state, act, limits),
    ),
  );
  return { ...after, complete: after.complete && standing.complete };
}

function actInEveryOrder(machine: Machine, from: State, act: Act, limits: ExploreLimits): Standing {
  const state = copyState(from);
  const { mechanisms, supplies } = applyAct(machine, state, act);
  return explore(machine, state, supplies ? 'all' : mechanisms, limits);
}

function waitInEveryOrder(machine: Machine, from: State, seconds: number, limits: ExploreLimits): Standing {
  const until = from.now + seconds;
  const ended: Ending[] = [];
  let complete = true;
  let waiting: Ending[] = [{ states: [copyState(from)] }];
  while (waiting.length > 0) {
    const next: Ending[] = [];
    for (const { states } of waiting) {
      // Of states that follow one another for ever each may be the one in which a timer fires.
      const due = states.filter((state) => nextDue(state) <= until + 1e-9);
      if (due.length === 0) {
        for (const state of states) state.now = until;
        ended.push({ states });
        continue;
      }
      for (const state of due) {
        state.now = nextDue(state);
        const found = explore(machine, state, fireTimers(machine, state, state.now), limits);
        complete &&= found.complete;
        next.push(...found.endings);
      }
    }
    waiting = distinct(next);
    if (waiting.length > MOST_WAYS) {
      complete = false;
      waiting = waiting.slice(0, MOST_WAYS);
    }
  }
  return { endings: distinct(ended), complete };
}

/** Whether a flasher is running, so that the state doesn't stay although no contact is about to move. */
export const isFlashing = (machine: Machine, state: State): boolean =>
  state.due.some((when, mechanism) => when !== Infinity && machine.drive[mechanism] === DRIVE.flasher);

/** The one steady state, when there is just one under every order. */
export function onlyState(machine: Machine, { endings, complete }: Standing): State | undefined {
  const state = endings[0]?.states[0];
  if (
    !complete ||
    !state ||
    endings.length > 1 ||
    endings[0]!.states.length > 1 ||
    isFlashing(machine, state)
  )
    return undefined;
  return state;
}
