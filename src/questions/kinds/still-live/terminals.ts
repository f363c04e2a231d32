/** Which terminals are asked about when something was opened, so that what they look like doesn't tell which are live. */
import type { Circuit, TerminalRef } from '../../../../shared/circuit.ts';
import { anatomyOf, circuitView, deviceOf, readAs, traitsOf } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';
import { liveState } from '../../items.ts';
import type { Standpoint } from '../../solving.ts';

const FEWEST = 4;
/** How often one of what was opened comes besides. */
const OWN_END = 0.35;
const MOST = 5;
/** Of one look, and of what carries motors' currents. */
const MOST_OF_A_LOOK = 3;
const MOST_OF_POWER = 1;

/** What is done to a button, a contact in the field or a breaker tells which of its sides are live. */
function tellsItself(circuit: Circuit, terminal: TerminalRef): boolean {
  const device = deviceOf(circuit, terminal.split(':')[0]!);
  if (!device) return false;
  const feeds = anatomyOf(device).mechanisms.some(({ drive }) => drive === 'feed');
  return feeds || traitsOf(device).movedBy !== undefined;
}

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
    if (seen.has(conductor) || tellsItself(circuit, terminal)) return false;
    seen.add(conductor);
    return true;
  });
}

/** What carries a motor's current is one look, whatever it is: on one way all of it is live or all dead. */
const POWER = 'power';

/**
 * What a terminal is by its device's symbol and its own number: `relay .4` for the make leg of any pole, `contactor 14`, `lamp X1`.
 * What a contactor's auxiliary contacts do goes by their place.
 */
function lookOf(circuit: Circuit, terminal: TerminalRef): string {
  const [name, number = ''] = terminal.split(':');
  const device = deviceOf(circuit, name!);
  const pole = device && anatomyOf(device).contacts.find(({ from, to }) => [from, to].includes(number));
  const winding = device && anatomyOf(device).loads.some(({ role }) => readAs(role) === 'winding');
  if (winding || pole?.main) return POWER;
  if (!pole) return `${device?.kind} ${number}`;
  return `${device.kind} ${pole.changeover ? `.${number.at(-1)}` : number}`;
}

/**
 * Of each look that is live in one place and dead in another a few terminals, each of them live or dead by a toss: what a terminal looks like
 * says what it mostly is, and here it says nothing.
 */
function someOfEachLook(
  terminals: readonly TerminalRef[],
  looks: (terminal: TerminalRef) => string,
  state: (terminal: TerminalRef) => string,
  random: Random,
): TerminalRef[] {
  const alike = new Map<string, TerminalRef[]>();
  for (const terminal of terminals) {
    const look = looks(terminal);
    alike.set(look, [...(alike.get(look) ?? []), terminal]);
  }
  return [...alike.values()].flatMap((group) => {
    const [live, dead] = ['live', 'dead'].map((side) =>
      random.shuffle(group.filter((terminal) => state(terminal) === side)),
    ) as [TerminalRef[], TerminalRef[]];
    const most = looks(group[0]!) === POWER ? MOST_OF_POWER : MOST_OF_A_LOOK;
    const count = Math.min(live.length, dead.length, most);
    return Array.from({ length: count }, () => random.pick([live, dead]).pop()!);
  });
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
 * Terminals to ask about after a device was opened, now and then one of its own among them, in the order of the drawing; undefined where too few can't
 * be told by their looks.
 */
export function terminalsFor(
  standpoint: Standpoint,
  circuit: Circuit,
  opened: string,
  random: Random,
): TerminalRef[] | undefined {
  const state = (terminal: TerminalRef): string => liveState(standpoint, terminal);
  const terminals = someOfEachLook(
    candidates(standpoint, circuit, random),
    (terminal) => lookOf(circuit, terminal),
    state,
    random,
  );
  if (terminals.length < FEWEST) return undefined;
  // Where there is power beside the control, it is asked about.
  const power = terminals.filter((terminal) => lookOf(circuit, terminal) === POWER);
  const others = terminals.filter((terminal) => !power.includes(terminal));
  const asked = [...power, ...random.sample(others, MOST - power.length)];
  const { conductors, wired } = circuitView(circuit);
  const taken = new Set(asked.map((terminal) => conductors.of.get(terminal)));
  const ends = endsOf(circuit, opened).filter((terminal) => !taken.has(conductors.of.get(terminal)!));
  const besides = random.chance(OWN_END);
  const chosen = new Set([...asked, ...(besides ? random.sample(ends, 1) : [])]);
  return [...wired].filter((terminal) => chosen.has(terminal));
}
