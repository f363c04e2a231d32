/** Which relays and contactors are meant never to be operated together: the two directions of what moves two ways. */
import type { Circuit } from '../../shared/circuit.ts';
import { traitsOf } from '../circuit/index.ts';
import { CoilWays } from './coil-ways.ts';
import type { Machine } from './machine.ts';
import { moversOf } from './movers.ts';
import type { Plan, PlanSwitch } from './plan.ts';

type Pair = readonly [number, number];

/** Contactors that carry a motor's current. */
const hasMains = ({ switches }: Plan, mechanism: number): boolean =>
  switches.some(({ mechanism: moves, main }) => moves === mechanism && main);

/** What stands on the ways to one coil. */
interface Fed {
  /** Mechanisms that have a make contact there, and those that have a break contact. */
  readonly makes: ReadonlySet<number>;
  readonly breaks: ReadonlySet<number>;
}

const mechanismsOf = (contacts: readonly PlanSwitch[], form: PlanSwitch['form']): ReadonlySet<number> =>
  new Set(contacts.flatMap((contact) => (contact.form === form ? [contact.mechanism] : [])));

/** Buttons and selectors that start something. */
function commandsIn({ devices }: Circuit, { mechanismOf }: Machine): number[] {
  return devices.flatMap((device) => {
    const { movedBy, stops } = traitsOf(device);
    const mechanism = mechanismOf.get(device.name);
    return movedBy === 'hand' && !stops?.(device) && mechanism !== undefined ? [mechanism] : [];
  });
}

class Pairs {
  private readonly machine: Machine;
  private readonly ways: CoilWays;
  private readonly movers: readonly number[];
  private readonly commands: readonly number[];
  private readonly contacts: readonly PlanSwitch[];
  /** Those of which a break contact is on a way to some coil. */
  private readonly locking: ReadonlySet<number>;
  private readonly known = new Map<number, Fed>();

  constructor(circuit: Circuit, machine: Machine) {
    this.machine = machine;
    this.ways = new CoilWays(machine.plan);
    this.movers = moversOf(machine);
    this.commands = commandsIn(circuit, machine);
    this.contacts = this.ways.contactsOf([...this.movers, ...this.commands]);
    this.locking = mechanismsOf(this.contacts, 'break');
  }

  private fed(mover: number): Fed {
    const known = this.known.get(mover);
    if (known) return known;
    const on = this.ways.onWayTo(mover, this.contacts);
    const fed = { makes: mechanismsOf(on, 'make'), breaks: mechanismsOf(on, 'break') };
    this.known.set(mover, fed);
    return fed;
  }

  private oneLocks = ([one, other]: Pair): boolean =>
    this.ways.locksOut(one, other) || this.ways.locksOut(other, one);

  /**
   * Each with a button of its own and both alike in holding themselves or not, of which one keeps the other off, by its contacts or by
   * its button's. A jog relay that opens a seal isn't like the one that it opens; a relay fed by the other follows it.
   */
  private areDirections([one, other]: Pair): boolean {
    if (this.commands.length < 2) return false;
    const lockable = [one, other, ...this.commands].some((mechanism) => this.locking.has(mechanism));
    if (!lockable) return false;
    const [a, b] = [this.fed(one), this.fed(other)];
    if (a.makes.has(other) || b.makes.has(one) || a.makes.has(one) !== b.makes.has(other)) return false;
    const own = (mine: Fed, its: Fed): number[] =>
      this.commands.filter((command) => mine.makes.has(command) && !its.makes.has(command));
    const [ofOne, ofOther] = [own(a, b), own(b, a)];
    if (ofOne.length === 0 || ofOther.length === 0) return false;
    const byButtons = ofOne.some((each) => b.breaks.has(each)) && ofOther.some((each) => a.breaks.has(each));
    return byButtons || this.oneLocks([one, other]);
  }

  private areMeant(pair: Pair): boolean {
    const [one, other] = pair;
    const { plan } = this.machine;
    const both = this.locking.has(one) && this.locking.has(other);
    if (both && this.fed(other).breaks.has(one) && this.fed(one).breaks.has(other)) return true;
    if (hasMains(plan, one) && hasMains(plan, other) && this.oneLocks(pair)) return true;
    return this.areDirections(pair);
  }

  get meant(): readonly Pair[] {
    const pairs = this.movers.flatMap((one, index) =>
      this.movers.slice(index + 1).map((other): Pair => [one, other]),
    );
    return pairs.filter((pair) => this.areMeant(pair));
  }
}

/**
 * Pairs of mechanisms meant to lock each other out: each has a break contact on a way to the other's coil; or they are two contactors
 * of which one locks the other out; or two relays for two directions.
 */
export const meantApart = (circuit: Circuit, machine: Machine): readonly Pair[] =>
  new Pairs(circuit, machine).meant;
