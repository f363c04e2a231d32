import type { TerminalRef } from '../../../../shared/circuit.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import type { Act } from '../../../../shared/scenario.ts';
import { anatomyOf, circuitView } from '../../../circuit/index.ts';
import { isolatingCautions } from '../../ask/cautions.ts';
import { balanced } from '../../choosing.ts';
import { liveState } from '../../items.ts';
import type { Kind } from '../../kind.ts';
import { certain, rightSolver, type Standpoint } from '../../solving.ts';
import { statesKind, yesAndNo } from '../../states-kind.ts';

const MOST = 6;

/**
 * Terminals worth asking: wires come to them, none of them is a supply's own or on a return, and no two are on one
 * conductor (a return counts as a live conductor in some rule books and not in others, so it isn't asked).
 */
function candidates({ machine }: Standpoint, circuit: QuestionOf<'still-live'>['circuit']): TerminalRef[] {
  const { plan } = machine;
  const returns = new Set(plan.supplies.map(({ poles }) => poles.at(-1)!.node));
  const supplies = new Set(plan.supplies.map(({ name }) => name));
  const seen = new Set<number>();
  return [...circuitView(circuit).wired].filter((terminal) => {
    const node = plan.nodeOf.get(terminal);
    if (node === undefined || returns.has(node) || supplies.has(terminal.split(':')[0]!) || seen.has(node))
      return false;
    seen.add(node);
    return true;
  });
}

/** Which terminals still are live with an isolator open or a breaker tripped? */
export const stillLive: Kind<'still-live'> = {
  ...statesKind('still-live', {
    task: () => ({ says: 'task' }),
    how: yesAndNo,
    cautions: ({ circuit }) => isolatingCautions(circuit),
  }),
  propose({ circuit, scenario, family }, random) {
    const feeds = circuit.devices.filter((device) =>
      anatomyOf(device).mechanisms.some(({ drive }) => drive === 'feed'),
    );
    if (feeds.length === 0) return undefined;
    const open: Act = { kind: 'open', device: random.pick(feeds).name };
    const acted = scenario.acts.some((act) => 'device' in act && act.device === open.device);
    const asking = acted ? scenario : { ...scenario, acts: [...scenario.acts, open] };
    const solver = rightSolver();
    const standpoint = solver.solve(circuit, asking);
    if (!standpoint || !certain(solver.machine(circuit, asking), asking)) return undefined;
    const terminals = candidates(standpoint, circuit).filter(
      (terminal) => liveState(standpoint, terminal) !== 'undefined',
    );
    // Where only the incoming terminal stays live, everybody knows it.
    if (terminals.filter((terminal) => liveState(standpoint, terminal) === 'live').length < 2)
      return undefined;
    const asked = balanced(
      terminals,
      (terminal) => liveState(standpoint, terminal),
      { fewest: 3, most: MOST },
      random,
    );
    return asked && { kind: 'still-live', circuit, scenario: asking, family, asked };
  },
};
