/** A scenario as a person would see it in slow motion: one step for each moment at which something changes. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Happening } from '../../../shared/solution.ts';
import { machineOf, planOf, readState, runTimed } from '../../solver/index.ts';
import type { CaptionSaid } from '../../words/index.ts';
import { plainLetters, type Rename } from '../letters.ts';
import { energisedTerminals, positionsOf, readingsShown } from '../states/from-solver.ts';
import type { ShownState } from '../states/shown-state.ts';
import { captionOf } from './caption.ts';

export interface Step {
  /** Milliseconds since the scenario began. */
  readonly ms: number;
  /** The act it follows from, -1 for the beginning. */
  readonly act: number;
  /** What happens. */
  readonly caption: readonly CaptionSaid[];
  readonly happenings: readonly Happening[];
  readonly state: ShownState;
}

export interface Steps {
  readonly steps: readonly Step[];
  /** True when there were more moments than were asked for, or the circuit never came to rest. */
  readonly cutOff: boolean;
}

/** More moments than this are no help to anyone. */
const MOST = 60;

export function stepsOf(
  circuit: Circuit,
  scenario: Scenario,
  { rename = plainLetters, most = MOST }: { readonly rename?: Rename; readonly most?: number } = {},
): Steps {
  const machine = machineOf(planOf(circuit, scenario.faults));
  const seen: { readonly until: number; readonly state: ShownState }[] = [];
  const { happenings, rested } = runTimed(
    machine,
    scenario,
    () => '',
    (state, until) => {
      if (seen.length >= most || until === (seen[seen.length - 1]?.until ?? 0)) return;
      const { at, supplyOn } = state;
      seen.push({
        until,
        state: {
          ...readingsShown(readState(machine, state)),
          positions: positionsOf(machine, at),
          energised: energisedTerminals(machine, at, supplyOn),
          stoppedBy: [],
        },
      });
    },
  );
  const devices = new Map(circuit.devices.map((device) => [device.name, device]));
  const scene = { circuit, devices, acts: scenario.acts, rename };
  const steps: Step[] = [];
  seen.forEach(({ until, state }, index) => {
    const list = happenings.slice(seen[index - 1]?.until ?? 0, until);
    const [ms, act] = [list[list.length - 1]?.ms ?? 0, list[0]?.act ?? -1];
    const before = steps[steps.length - 1];
    // Several changes at one moment of one act are one step.
    const joins = before?.ms === ms && before.act === act;
    const all = joins ? [...before.happenings, ...list] : list;
    const step = { ms, act, caption: captionOf(all, scene), happenings: all, state };
    if (joins) steps[steps.length - 1] = step;
    else steps.push(step);
  });
  return {
    steps,
    cutOff: !rested || (seen[seen.length - 1]?.until ?? happenings.length) < happenings.length,
  };
}
