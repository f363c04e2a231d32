/** One circuit being looked at: its machine, how it stands after each list of acts, and the wrong machines, each made once. */
import type { Act, Fault, Scenario } from '../../shared/scenario.ts';
import { writeActs } from '../circuit/index.ts';
import { MISCONCEPTIONS, type Misconception } from '../misconceptions/index.ts';
import {
  copyState,
  doAct,
  everyBeginning,
  everyOutcome,
  isFlashing,
  type Machine,
  machineOf,
  planOf,
  play,
  type Standing,
  type State,
  variantOf,
  withoutDeadEnds,
} from '../solver/index.ts';
import { flashingPicture, type ItemIndices, itemIndicesIn, type Picture, pictureOf } from './picture.ts';
import type { Draft } from './types.ts';

export interface Workbench {
  readonly machine: Machine;
  readonly places: ItemIndices;
  /** How the circuit stands at the start, under every order of operation. */
  readonly beginning: Standing;
  /** How it stands after one more act. Asked again, it is remembered. */
  after(standing: Standing, act: Act): Standing;
  /** What is read off a state of the machine, resting or flashing. */
  read(state: State): Picture;
  /**
   * What somebody with a misconception reads off after the scenario; undefined when the idea makes no difference to plan
   * or scenario, or leads to no rest or to a short circuit that nobody who thinks so would have seen.
   */
  wrong(misconception: Misconception, scenario: Scenario): Picture | undefined;
}

/** States explored for one act; a draft that needs more is refused, which is cheaper than finding out. */
const LIMITS = { states: 1_000 };

/** A machine settled at the start of a scenario. */
interface Started {
  readonly machine: Machine;
  readonly state: State;
  readonly steady: boolean;
}

function started(machine: Machine): Started {
  const { state, steady } = play(machine, { start: 'live', acts: [] });
  return { machine, state, steady };
}

export function workbenchFor(draft: Draft, faults: readonly Fault[]): Workbench {
  const { circuit } = draft;
  const machine = machineOf(withoutDeadEnds(planOf(circuit, faults)));
  const beginning = everyBeginning(machine, 'live', LIMITS);
  const known = new Map<Standing, Map<string, Standing>>();
  const places = itemIndicesIn(machine, draft);
  const variants = new Map<string, Started | undefined>();

  /** The wrong machine of a misconception, and how it stands at the start; undefined where the plan is seen as it is. */
  const variantFor = ({ id, changePlan }: Misconception): Started | undefined => {
    if (variants.has(id)) return variants.get(id);
    const plan = changePlan?.(machine.plan, circuit);
    const variant = plan ? started(variantOf(machine, plan)) : undefined;
    variants.set(id, variant);
    return variant;
  };
  let asItIs: Started | undefined;
  const readOn = (on: Machine, state: State): Picture =>
    isFlashing(on, state) ? flashingPicture(on, state, places) : pictureOf(on, state, places);

  return {
    machine,
    places,
    beginning,
    after(standing, act) {
      let next = known.get(standing);
      if (!next) {
        next = new Map();
        known.set(standing, next);
      }
      const key = writeActs([act]);
      const before = next.get(key);
      if (before) return before;
      const made = everyOutcome(machine, standing, act, LIMITS);
      next.set(key, made);
      return made;
    },
    read: (state) => readOn(machine, state),
    wrong(misconception, scenario) {
      const variant = variantFor(misconception);
      const done = misconception.changeScenario?.(scenario, circuit);
      if (variant === undefined && done === undefined) return undefined;
      asItIs ??= started(machine);
      const { machine: on, state: from, steady } = variant ?? asItIs;
      if (!steady) return undefined;
      const state = copyState(from);
      for (const act of (done ?? scenario).acts) if (!doAct(on, state, act)) return undefined;
      if (faults.length === 0 && state.tripped.length + state.shorted.length > 0) return undefined;
      return readOn(on, state);
    },
  };
}

/** Every misconception with what it makes of the scenario. */
export const wrongPictures = (
  bench: Workbench,
  scenario: Scenario,
): { readonly id: string; readonly picture: Picture }[] =>
  MISCONCEPTIONS.flatMap((misconception) => {
    const picture = bench.wrong(misconception, scenario);
    return picture ? [{ id: misconception.id, picture }] : [];
  });
