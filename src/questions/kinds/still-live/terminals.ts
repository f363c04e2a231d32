/** Which terminals are asked about when something was opened, so that what they look like doesn't tell which are live. */
import type { Circuit, TerminalRef } from '../../../../shared/circuit.ts';
import { anatomyOf, circuitView, deviceOf } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';
import { liveState } from '../../items.ts';
import type { Standpoint } from '../../solving.ts';

/** One of what was opened comes besides. */
const FEWEST = 3;
const MOST = 5;

/**
 * Terminals worth asking: wires come to them, none of them is a supply's own or on a return, and no two are on one
 * conductor (a return counts as a live conductor in some rule books and not in others, so it isn't asked).
 */
function candidates({ machine }: Standpoint, circuit: Circuit, random: Random): TerminalRef[] {
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
function lookOf(circuit: Circuit, terminal: TerminalRef): string {
  const [name, number = ''] = terminal.split(':');
  const kind = deviceOf(circuit, name!)?.kind;
  const role = /^\d\d$/.test(number) ? number.at(-1) : /^\d$/.test(number) ? Number(number) % 2 : number;
  return `${kind} ${role}`;
}

/**
 * Of each look that is live in one place and dead in another one terminal, which of the two by a toss: what a terminal looks like says
 * what it mostly is, and here it says nothing.
 */
function oneOfEachLook(
  terminals: readonly TerminalRef[],
  looks: (terminal: TerminalRef) => string,
  state: (terminal: TerminalRef) => string,
  random: Random,
): TerminalRef[] {
  const kept = new Set(
    [...new Set(terminals.map(looks))].flatMap((look) => {
      const alike = terminals.filter((terminal) => looks(terminal) === look);
      const sides = ['live', 'dead'].map((side) => alike.filter((terminal) => state(terminal) === side));
      return sides.some((side) => side.length === 0) ? [] : [random.pick(random.pick(sides))];
    }),
  );
  return terminals.filter((terminal) => kept.has(terminal));
}

/** The two sides of what was opened: the one that everybody forgets stays live. */
function endsOf(circuit: Circuit, name: string): TerminalRef[] {
  const { wired } = circuitView(circuit);
  return anatomyOf(deviceOf(circuit, name)!)
    .contacts.slice(0, 1)
    .flatMap(({ from, to }): TerminalRef[] => [`${name}:${from}`, `${name}:${to}`])
    .filter((terminal) => wired.has(terminal));
}

/**
 * Terminals to ask about after a device was opened, one of its own among them, in the order of the drawing; undefined where too few can't
 * be told by their looks.
 */
export function terminalsFor(
  standpoint: Standpoint,
  circuit: Circuit,
  opened: string,
  random: Random,
): TerminalRef[] | undefined {
  const state = (terminal: TerminalRef): string => liveState(standpoint, terminal);
  const terminals = oneOfEachLook(
    candidates(standpoint, circuit, random),
    (terminal) => lookOf(circuit, terminal),
    state,
    random,
  );
  if (terminals.length < FEWEST) return undefined;
  const asked = random.sample(terminals, MOST);
  const { conductors, wired } = circuitView(circuit);
  const taken = new Set(asked.map((terminal) => conductors.of.get(terminal)));
  const ends = endsOf(circuit, opened).filter((terminal) => !taken.has(conductors.of.get(terminal)!));
  const chosen = new Set([...asked, ...random.sample(ends, 1)]);
  return [...wired].filter((terminal) => chosen.has(terminal));
}
