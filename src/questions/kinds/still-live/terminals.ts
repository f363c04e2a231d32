/** Which terminals are asked about when something was opened, so that what they look like doesn't tell which are live. */
import type { TerminalRef } from '../../../../shared/circuit.ts';
import { type CircuitView, readAs, traitsOf } from '../../../circuit/index.ts';
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

/** What carries a motor's current is one look, whatever it is: on one way all of it is live or all dead. */
const POWER = 'power';

/**
 * What a terminal is by its device's symbol and its own number: `relay .4` for the make leg of any pole, `contactor 14`, `lamp X1`.
 * What a contactor's auxiliary contacts do goes by their place. Undefined where it isn't asked: it is a supply's, or what is done to
 * a button, a contact in the field or a breaker tells which of its sides are live.
 */
function lookOf({ devices }: CircuitView, terminal: TerminalRef): string | undefined {
  const [name, number] = terminal.split(':') as [string, string];
  const found = devices.get(name);
  if (!found || traitsOf(found.device).movedBy !== undefined) return undefined;
  const { device, anatomy } = found;
  if (anatomy.mechanisms.some(({ drive }) => drive === 'feed')) return undefined;
  const pole = anatomy.contacts.find(({ from, to }) => from === number || to === number);
  if (pole?.main || anatomy.loads.some(({ role }) => readAs(role) === 'winding')) return POWER;
  return `${device.kind} ${pole?.changeover ? `.${number.at(-1)}` : number}`;
}

/**
 * Terminals worth asking, by their looks: wires come to them, none of them is on a return, and no two are on one conductor (a
 * return counts as a live conductor in some rule books and not in others, so it isn't asked).
 */
function byLook({ machine }: Standpoint, view: CircuitView, random: Random): Map<string, TerminalRef[]> {
  const { plan } = machine;
  // Wires as they are drawn: a conductor that is off at a terminal is still drawn to it.
  const { wired, conductors } = view;
  const returns = new Set(plan.supplies.map(({ poles }) => poles.at(-1)!.node));
  const seen = new Set<number>();
  const looks = new Map<string, TerminalRef[]>();
  // Which of the terminals on a conductor stands for it is as good as any other.
  for (const terminal of random.shuffle([...wired])) {
    const node = plan.nodeOf.get(terminal);
    const conductor = conductors.of.get(terminal)!;
    if (node === undefined || returns.has(node) || seen.has(conductor)) continue;
    const look = lookOf(view, terminal);
    if (look === undefined) continue;
    seen.add(conductor);
    const alike = looks.get(look);
    if (alike) alike.push(terminal);
    else looks.set(look, [terminal]);
  }
  return looks;
}

/**
 * Of terminals that look alike, where some are live and some dead, a few, each of them live or dead by a toss: what a terminal looks
 * like says what it mostly is, and here it says nothing.
 */
function someAlike(
  standpoint: Standpoint,
  alike: readonly TerminalRef[],
  most: number,
  random: Random,
): TerminalRef[] {
  if (alike.length < 2) return [];
  const live: TerminalRef[] = [];
  const dead: TerminalRef[] = [];
  for (const terminal of alike) (liveState(standpoint, terminal) === 'live' ? live : dead).push(terminal);
  const count = Math.min(live.length, dead.length, most);
  return Array.from({ length: count }, () => random.pick([live, dead]).pop()!);
}

/** The two sides of what was opened: the one that everybody forgets stays live. */
function endsOf({ devices, wired }: CircuitView, name: string): TerminalRef[] {
  return devices
    .get(name)!
    .anatomy.contacts.slice(0, 1)
    .flatMap(({ from, to }): TerminalRef[] => [`${name}:${from}`, `${name}:${to}`])
    .filter((terminal) => wired.has(terminal));
}

/**
 * Terminals to ask about after a device was opened, now and then one of its own among them, in the order of the drawing; undefined
 * where too few can't be told by their looks.
 */
export function terminalsFor(
  standpoint: Standpoint,
  view: CircuitView,
  opened: string,
  random: Random,
): TerminalRef[] | undefined {
  const looks = byLook(standpoint, view, random);
  // Where there is power beside the control, it is asked about.
  const power = someAlike(standpoint, looks.get(POWER) ?? [], MOST_OF_POWER, random);
  looks.delete(POWER);
  const others = [...looks.values()].flatMap((alike) => someAlike(standpoint, alike, MOST_OF_A_LOOK, random));
  if (power.length + others.length < FEWEST) return undefined;
  const asked = [...power, ...random.sample(others, MOST - power.length)];
  const { conductors, wired } = view;
  const taken = new Set(asked.map((terminal) => conductors.of.get(terminal)));
  const ends = endsOf(view, opened).filter((terminal) => !taken.has(conductors.of.get(terminal)!));
  const besides = random.chance(OWN_END);
  const chosen = new Set([...asked, ...(besides ? random.sample(ends, 1) : [])]);
  return [...wired].filter((terminal) => chosen.has(terminal));
}
