import type { Act, Scenario } from '../../shared/scenario.ts';
import { applyAct } from './acts.ts';
import type { Ending } from './endings.ts';
import { EXPLORE_LIMITS, type ExploreLimits, explore } from './explore.ts';
import { isFlashing } from './flashing.ts';
import type { Machine } from './machine.ts';
import { doAct } from './play.ts';
import { copyState, type State, startState } from './state.ts';
import { fireTimers, isDue, MOST_FIRINGS, nextDue, postpone, Rounds } from './time.ts';

/** How a scenario can stand after some of its acts: one way, or one of several. */
export interface Standing {
  readonly endings: readonly Ending[];
  /** False when not every order could be tried, or too many timers fired: what is said then is not certain. */
  readonly complete: boolean;
  /** What it has cost so far; the limit of work is one for the whole scenario. */
  readonly work?: number;
}

/** Ways carried from one act to the next; beyond it the standing is called incomplete. */
const MOST_WAYS = 64;

/** States in all of them: a circuit that never rests may be anywhere when the next act comes. */
const MOST_STATES = 4 * MOST_WAYS;

/** Ways followed on, in waves only, once a standing is incomplete. */
const WAYS_OF_INCOMPLETE = 4;

const stateKey = (state: State): string => {
  const due = Array.from(state.due, (when) => (when === Infinity ? '-' : (when - state.now).toFixed(6)));
  // Where a mechanism set out for matters only while it is on its way.
  const heading = state.heading.map((mask, mechanism) => {
    const at = state.at[mechanism]!;
    return (at & (at - 1)) !== 0 ? mask : 0;
  });
  const parts = [
    state.at,
    state.goal,
    state.own,
    heading,
    state.held,
    state.supplyOn,
    due,
    state.now.toFixed(6),
  ];
  return parts.map(String).join(' ');
};

/** The same ending reached by several ways counts once. */
function distinct(endings: readonly Ending[]): Ending[] {
  if (endings.length < 2) return [...endings];
  const seen = new Map<string, Ending>();
  for (const ending of endings) seen.set(ending.states.map(stateKey).sort().join('|'), ending);
  return [...seen.values()];
}

/** The start of a scenario, settled in every order. */
export function everyBeginning(
  machine: Machine,
  start: Scenario['start'],
  limits: ExploreLimits = EXPLORE_LIMITS,
): Standing {
  const { endings, complete, work } = explore(machine, [startState(machine, start)], 'all', limits);
  return { endings: distinct(endings), complete, work };
}

/** One act done in every order from every way the circuit can stand. */
export function everyOutcome(
  machine: Machine,
  standing: Standing,
  act: Act,
  limits: ExploreLimits = EXPLORE_LIMITS,
): Standing {
  const before = standing.endings.flatMap(({ states }) => states);
  if (!standing.complete || before.length > MOST_STATES) {
    const endings = before.slice(0, WAYS_OF_INCOMPLETE).map((from): Ending => {
      const state = copyState(from);
      doAct(machine, state, act);
      return { states: [state] };
    });
    return { endings: distinct(endings), complete: false, work: standing.work ?? 0 };
  }
  const tour = new Tour(machine, limits, standing.work ?? 0);
  const endings =
    act.kind === 'wait' ? before.flatMap((state) => tour.wait(state, act.seconds)) : tour.act(before, act);
  const found = distinct(endings);
  // From some states of a round that never rests only what all of them come to is certain.
  const certain =
    !standing.endings.some(({ sampled }) => sampled) ||
    found.length === 1 ||
    found.every(({ sampled }) => sampled);
  return {
    endings: found.slice(0, MOST_WAYS),
    complete: tour.complete && certain && found.length <= MOST_WAYS,
    work: tour.work,
  };
}

/** Explores one act from one state after another, within one limit of work. */
class Tour {
  readonly machine: Machine;
  readonly limits: ExploreLimits;
  work: number;
  complete = true;

  constructor(machine: Machine, limits: ExploreLimits, work: number) {
    this.machine = machine;
    this.limits = limits;
    this.work = work;
  }

  private explore(from: readonly State[], commanded: readonly number[] | 'all'): readonly Ending[] {
    const { work = EXPLORE_LIMITS.work } = this.limits;
    const found = explore(this.machine, from, commanded, { ...this.limits, work: work - this.work });
    this.work += found.work;
    this.complete &&= found.complete;
    return found.endings;
  }

  act(from: readonly State[], act: Act): readonly Ending[] {
    const states = from.map(copyState);
    const effects = states.map((state) => applyAct(this.machine, state, act));
    const { mechanisms, supplies } = effects[0]!;
    return this.explore(states, supplies ? 'all' : mechanisms);
  }

  wait(from: State, seconds: number): readonly Ending[] {
    const until = from.now + seconds;
    const rounds = new Rounds();
    const ended: Ending[] = [];
    let waiting: readonly Ending[] = [{ states: [copyState(from)] }];
    while (waiting.length > 0) {
      const next: Ending[] = [];
      for (const ending of waiting) {
        const { states } = ending;
        const alone = waiting.length === 1 && states.length === 1;
        if (alone && isDue(states[0]!, until)) rounds.skip(states[0]!, until);
        const due = states.filter((state) => isDue(state, until));
        if (due.length < states.length) ended.push(this.passed(ending, until));
        // Of states that follow one another for ever each may be the one in which a timer fires.
        for (const state of due) {
          if (++state.firings > MOST_FIRINGS || !this.complete) {
            this.complete = false;
            ended.push(this.passed({ states: [state] }, until));
            continue;
          }
          state.now = nextDue(state);
          next.push(...this.explore([state], fireTimers(this.machine, state, state.now)));
        }
      }
      waiting = distinct(next);
      if (waiting.length > MOST_WAYS) {
        this.complete = false;
        waiting = waiting.slice(0, MOST_WAYS);
      }
    }
    return distinct(ended);
  }

  /** The ending once the time is over: nothing has fired in it, or what has been started is started ever anew. */
  private passed({ states }: Ending, until: number): Ending {
    return {
      states: states.map((from) => {
        const state = copyState(from);
        if (isDue(state, until)) postpone(state, until - state.now);
        state.now = until;
        return state;
      }),
    };
  }
}

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
