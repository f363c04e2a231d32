import type { Circuit, TerminalRef } from '../../../../shared/circuit.ts';
import type { Act, Scenario } from '../../../../shared/scenario.ts';
import { anatomyOf, circuitView } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';
import { isolatingCautions } from '../../ask/cautions.ts';
import { liveState } from '../../items.ts';
import type { Kind } from '../../kind.ts';
import { certain, type Standpoint } from '../../solving.ts';
import { statesKind, yesAndNo } from '../../states-kind.ts';
import { terminalsFor } from './terminals.ts';

/** Share let through of those in which it changes nothing of what is asked. */
const UNCHANGED_SHARE = 0.5;

type Opening = Extract<Act, { kind: 'open' }>;

/** The same up to where it was opened. */
const before = ({ acts, ...rest }: Scenario, { device }: Opening): Scenario => ({
  ...rest,
  acts: acts.slice(
    0,
    acts.findLastIndex((act) => act.kind === 'open' && act.device === device),
  ),
});

/** Whether opening it has made one of the terminals dead: else the question is about something else. */
const changesOne = (asked: readonly string[], now: Standpoint, earlier: Standpoint | undefined): boolean =>
  earlier !== undefined &&
  asked.some((terminal) => liveState(now, terminal) !== liveState(earlier, terminal));

/** How often others are taken where opening it changes nothing of what would be asked. */
const TRIES = 3;

function askedOf(
  now: Standpoint,
  earlier: Standpoint | undefined,
  circuit: Circuit,
  opened: string,
  random: Random,
): TerminalRef[] | undefined {
  let unchanged: TerminalRef[] | undefined;
  for (let tried = 0; tried < TRIES; tried++) {
    const asked = terminalsFor(now, circuitView(circuit), opened, random);
    if (!asked) continue;
    if (changesOne(asked, now, earlier)) return asked;
    unchanged ??= asked;
  }
  // Were it never so, one at least would be known to be dead.
  return random.chance(UNCHANGED_SHARE) ? unchanged : undefined;
}

/** Which terminals still are live with an isolator open or a breaker tripped? */
export const stillLive: Kind<'still-live'> = {
  ...statesKind('still-live', {
    task: () => ({ says: 'task' }),
    how: yesAndNo,
    cautions: ({ circuit }) => isolatingCautions(circuit),
  }),
  takesAway: true,
  propose({ circuit, scenario, family }, random, solver) {
    const feeds = circuit.devices.filter((device) =>
      anatomyOf(device).mechanisms.some(({ drive }) => drive === 'feed'),
    );
    // Not every one of them leaves live beside dead terminals that look alike.
    for (const { name } of random.shuffle(feeds)) {
      const open: Opening = { kind: 'open', device: name };
      const last = scenario.acts.findLast((act) => 'device' in act && act.device === name);
      const asking = last?.kind === 'open' ? scenario : { ...scenario, acts: [...scenario.acts, open] };
      const standpoint = solver.solve(circuit, asking);
      if (!standpoint) continue;
      const asked = askedOf(standpoint, solver.solve(circuit, before(asking, open)), circuit, name, random);
      if (!asked) continue;
      // Last, because it costs most.
      if (certain(solver.machine(circuit, asking), asking))
        return { kind: 'still-live', circuit, scenario: asking, family, asked };
    }
    return undefined;
  },
};
