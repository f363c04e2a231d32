import type { TerminalRef } from '../../../../shared/circuit.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import type { Act } from '../../../../shared/scenario.ts';
import { anatomyOf, circuitView, deviceOf } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';
import { isolatingCautions } from '../../ask/cautions.ts';
import { unguessable } from '../../choosing.ts';
import { liveState } from '../../items.ts';
import type { Kind } from '../../kind.ts';
import { certain, rightSolver, type Standpoint } from '../../solving.ts';
import { statesKind, yesAndNo } from '../../states-kind.ts';

/** With fewer, and live and dead alike among each sort of terminal, they are guessed too often. */
const FEWEST = 4;
const MOST = 6;
/** Live ones, and dead ones, of one look at most: two that look alike are soon two of the same. */
const MOST_ALIKE = 1;

/**
 * Terminals worth asking: wires come to them, none of them is a supply's own or on a return, and no two are on one
 * conductor (a return counts as a live conductor in some rule books and not in others, so it isn't asked).
 */
function candidates(
  { machine }: Standpoint,
  circuit: QuestionOf<'still-live'>['circuit'],
  random: Random,
): TerminalRef[] {
  const { plan } = machine;
  const returns = new Set(plan.supplies.map(({ poles }) => poles.at(-1)!.node));
  const supplies = new Set(plan.supplies.map(({ name }) => name));
  // Wires as they are drawn: a conductor that is off at a terminal is still drawn to it.
  const { wired, conductors } = circuitView(circuit);
  const seen = new Set<number>();
  // Which of the terminals on a conductor stands for it is as good as any other.
  return random.shuffle([...wired]).filter((terminal) => {
    const node = plan.nodeOf.get(terminal);
    const conductor = conductors.of.get(terminal)!;
    if (node === undefined || returns.has(node) || supplies.has(terminal.split(':')[0]!)) return false;
    if (seen.has(conductor)) return false;
    seen.add(conductor);
    return true;
  });
}

/** What a terminal is by its device's symbol and its own number: `relay 4` for the make leg of any pole, `lamp X1`. */
function lookOf(circuit: QuestionOf<'still-live'>['circuit'], terminal: TerminalRef): string {
  const [name, number = ''] = terminal.split(':');
  const kind = deviceOf(circuit, name!)?.kind;
  const role = /^\d\d$/.test(number) ? number.at(-1) : /^\d$/.test(number) ? Number(number) % 2 : number;
  return `${kind} ${role}`;
}

/** As many live as dead ones of each look: a terminal's number says what it mostly is, and here it says nothing. */
function evened(
  terminals: readonly TerminalRef[],
  looks: (terminal: TerminalRef) => string,
  state: (terminal: TerminalRef) => string,
  random: Random,
): TerminalRef[] {
  const kept = new Set(
    [...new Set(terminals.map(looks))].flatMap((look) => {
      const alike = random.shuffle(terminals.filter((terminal) => looks(terminal) === look));
      const live = alike.filter((terminal) => state(terminal) === 'live');
      const dead = alike.filter((terminal) => state(terminal) === 'dead');
      const count = Math.min(live.length, dead.length, MOST_ALIKE);
      return [...live.slice(0, count), ...dead.slice(0, count)];
    }),
  );
  return terminals.filter((terminal) => kept.has(terminal));
}

/** The two sides of what was opened: the one that everybody forgets stays live. */
function endsOf(circuit: QuestionOf<'still-live'>['circuit'], name: string): TerminalRef[] {
  const { wired } = circuitView(circuit);
  return anatomyOf(deviceOf(circuit, name)!)
    .contacts.slice(0, 1)
    .flatMap(({ from, to }): TerminalRef[] => [`${name}:${from}`, `${name}:${to}`])
    .filter((terminal) => wired.has(terminal));
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
    const state = (terminal: TerminalRef): string => liveState(standpoint, terminal);
    const terminals = evened(
      candidates(standpoint, circuit, random),
      (terminal) => lookOf(circuit, terminal),
      state,
      random,
    );
    const asked = unguessable(terminals, state, { fewest: FEWEST, most: MOST }, random);
    if (!asked) return undefined;
    const { conductors, wired } = circuitView(circuit);
    const taken = new Set(asked.map((terminal) => conductors.of.get(terminal)));
    const ends = endsOf(circuit, open.device).filter((terminal) => !taken.has(conductors.of.get(terminal)!));
    const chosen = new Set([...asked, ...random.sample(ends, 1)]);
    const inOrder = [...wired].filter((terminal) => chosen.has(terminal));
    return { kind: 'still-live', circuit, scenario: asking, family, asked: inOrder };
  },
};
