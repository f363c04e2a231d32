/** A rule of practice that has to be solved: what is energised while all is well doesn't go on saying so once it can't tell. */

import type { Circuit, TerminalRef } from '../../shared/circuit.ts';
import type { Act, Fault } from '../../shared/scenario.ts';
import type { TraceHop } from '../../shared/solution.ts';
import {
  actSaid,
  type CircuitView,
  type DrawingRule,
  deviceOf,
  faultSaid,
  terminalRefOf,
  traitsOf,
} from '../circuit/index.ts';
import { moversOf } from './movers.ts';
import type { Plan } from './plan.ts';
import { type Plant, plantOf } from './plant.ts';
import { plantActs } from './plant-contacts.ts';
import { afterAll, OPERATED, REST } from './plant-walk.ts';
import { begin } from './play.ts';
import { type Shown, ShownLamps } from './shown-lamps.ts';
import { tracerOf } from './trace.ts';
import { variantOf } from './variant.ts';
import { whereFed } from './where-fed.ts';

type Loose = Extract<Fault, { kind: 'loose' }>;
type Burnt = Extract<Fault, { kind: 'open' }>;
type Blown = Extract<Fault, { kind: 'blown' }>;
type Failure = Loose | Burnt | Blown;
type RuleFound = ReturnType<DrawingRule['check']>[number];

/** A relay that is energised while nothing has happened and releases when something does. */
interface Watching {
  readonly relay: string;
  readonly act: Act;
  /** What its releasing puts out of the lamps that said that all is well, and of those that warned; what it lights of the first. */
  readonly wellOut: readonly string[];
  readonly warningOut: readonly string[];
  readonly wellOn: readonly string[];
}

const gone = (before: ReadonlySet<string>, after: ReadonlySet<string>): string[] =>
  [...before].filter((id) => !after.has(id));

/**
 * The plan with a terminal off, or a coil burnt: no contact there carries anything, and a relay whose coil ends there stays at rest.
 * The same as `planOf` makes of the fault, for what is no load but a coil, with conductors numbered as before: a tenth of the cost.
 */
function planWith(plan: Plan, fault: Loose | Burnt): Plan {
  const off = (device: string, from: string, to: string): boolean =>
    fault.kind === 'open'
      ? terminalRefOf(device, from) === fault.from
      : [from, to].some((terminal) => terminalRefOf(device, terminal) === fault.at);
  const still = new Set(
    plan.loads.flatMap(({ device, from, to, mechanism }) => (off(device, from, to) ? [mechanism] : [])),
  );
  return {
    ...plan,
    switches: plan.switches.map((each) =>
      off(each.device, each.from, each.to) ? { ...each, fixed: 'open' as const } : each,
    ),
    mechanisms: plan.mechanisms.map((each, index) => (still.has(index) ? { ...each, frozenAt: 0 } : each)),
  };
}

class Chains {
  readonly watching: readonly Watching[];
  private readonly circuit: Circuit;
  private readonly view: CircuitView;
  private readonly lamps: ShownLamps;
  private readonly plant: Plant;
  private readonly trace: ReturnType<typeof tracerOf>;
  private readonly paths = new Map<string, readonly TraceHop[]>();
  private readonly known = new Map<string, Shown>();

  constructor(circuit: Circuit, view: CircuitView, lamps: ShownLamps) {
    this.circuit = circuit;
    this.view = view;
    this.lamps = lamps;
    this.plant = plantOf(circuit);
    this.trace = tracerOf(this.plant.machine, this.plant.start);
    this.watching = this.look();
  }

  private look(): Watching[] {
    const { lamps } = this;
    const { machine, start } = this.plant;
    const rest = lamps.in(machine, start);
    const energised = moversOf(machine).filter((mover) => start.at[mover] === OPERATED);
    if (energised.length === 0) return [];
    return plantActs(this.circuit).flatMap((act) => {
      const after = afterAll(machine, start, [act]);
      const released = energised.filter((mover) => after?.at[mover] === REST);
      if (!after || released.length === 0) return [];
      const shown = lamps.in(machine, after);
      const changes = {
        wellOut: gone(rest.well, shown.well),
        warningOut: gone(rest.warning, shown.warning),
        wellOn: gone(shown.well, rest.well),
      };
      return released.map((mover) => {
        const relay = machine.plan.mechanisms[mover]!.id;
        // A lamp that another contact feeds tells of that one, and goes out with its own wire.
        const itsOwn = (id: string): boolean => this.pathTo(id).some(({ device }) => device === relay);
        return {
          relay,
          act,
          wellOn: changes.wellOn,
          wellOut: changes.wellOut.filter(itsOwn),
          warningOut: changes.warningOut.filter(itsOwn),
        };
      });
    });
  }

  /** The way that feeds a relay or a lamp before anything has happened. */
  private pathTo(id: string): readonly TraceHop[] {
    let path = this.paths.get(id);
    if (!path) {
      path = this.trace(id)?.path ?? [];
      this.paths.set(id, path);
    }
    return path;
  }

  /** Terminals at which conductors branch: between two of them a way is broken in one place as in another. */
  private branches(terminal: TerminalRef): boolean {
    const { groups, of } = this.view.conductors;
    return groups[of.get(terminal)!]!.length !== 2;
  }

  /** Each way in which the chain to a relay can fail: a wire off, what feeds it open, its coil burnt. */
  faultsOf(relay: string): readonly Failure[] {
    const hops = this.pathTo(relay);
    const faults = hops.flatMap(({ device, enter, leave }): Failure[] => {
      const found = deviceOf(this.circuit, device);
      if (!found) return [];
      const loose = [enter, ...(leave === undefined ? [] : [leave])]
        .map((terminal) => terminalRefOf(device, terminal))
        .filter((terminal) => this.branches(terminal))
        .map((at): Failure => ({ kind: 'loose', at }));
      const feeds = traitsOf(found).verbs.includes('open');
      return feeds ? [...loose, { kind: 'blown', device }] : loose;
    });
    const coil = hops.find(({ device, leave }) => device === relay && leave !== undefined);
    const ends = coil && {
      from: terminalRefOf(relay, coil.enter),
      to: terminalRefOf(relay, coil.leave!),
    };
    return ends ? [...faults, { kind: 'open', ...ends }] : faults;
  }

  /** The supplies that a relay's way begins at. */
  suppliesOf(relay: string): readonly string[] {
    const names = new Set(this.pathTo(relay).map(({ device }) => device));
    return this.circuit.supplies.map(({ name }) => name).filter((name) => names.has(name));
  }

  private remembered(key: string, make: () => Shown): Shown {
    const before = this.known.get(key);
    if (before) return before;
    const made = make();
    this.known.set(key, made);
    return made;
  }

  with(fault: Failure): Shown {
    return this.remembered(JSON.stringify(fault), () => {
      const { machine } = this.plant;
      if (fault.kind === 'blown') return this.after({ kind: 'open', device: fault.device });
      const variant = variantOf(machine, planWith(machine.plan, fault));
      return this.lamps.in(variant, begin(variant, 'live'));
    });
  }

  private after(act: Act): Shown {
    const { machine, start } = this.plant;
    return this.lamps.in(machine, afterAll(machine, start, [act]) ?? start);
  }

  without(supply: string): Shown {
    return this.remembered(supply, () => this.after({ kind: 'fail', supply }));
  }
}

/** Placed at the lamp that is to be fed otherwise. */
const foundAt = (circuit: Circuit, id: string, said: RuleFound['said']): RuleFound => ({
  said,
  concern: whereFed(circuit, id),
});

/** The first failure of its chain under which a lamp that its releasing puts out stays lit. */
function staysLit(chains: Chains, { relay, wellOut }: Watching, circuit: Circuit): RuleFound[] {
  const lit = ({ well }: Shown): string | undefined => wellOut.find((id) => well.has(id));
  for (const fault of chains.faultsOf(relay)) {
    const lamp = lit(chains.with(fault));
    if (lamp !== undefined)
      return [foundAt(circuit, lamp, { says: 'fails-safe', lamp, relay, fault: faultSaid(fault, circuit) })];
  }
  for (const supply of chains.suppliesOf(relay)) {
    const lamp = lit(chains.without(supply));
    if (lamp !== undefined)
      return [foundAt(circuit, lamp, { says: 'fails-safe.supply', lamp, relay, supply })];
  }
  return [];
}

/**
 * Where something that happens releases a relay that is energised otherwise, and puts out a green lamp that hung on it, so does
 * every single failure of the chain to that relay. And where its releasing turns a warning into a green lamp, every failure would: then it
 * is energised in the wrong state. What is energised only to warn isn't held to it: that doesn't claim to tell of its own failure.
 */
export const failsSafe: DrawingRule = {
  name: 'fails-safe',
  check(circuit, view) {
    const lamps = new ShownLamps(circuit);
    if (!lamps.any) return [];
    const chains = new Chains(circuit, view, lamps);
    return chains.watching.flatMap((each) => {
      const { relay, act, wellOn, warningOut, wellOut } = each;
      if (wellOn.length > 0 && warningOut.length > 0)
        return [
          // Here it is the relay that is to be fed otherwise.
          foundAt(circuit, relay, {
            says: 'fails-safe.reversed',
            relay,
            lamp: wellOn[0]!,
            warning: warningOut[0]!,
            act: actSaid(act, circuit),
          }),
        ];
      return wellOut.length > 0 ? staysLit(chains, each, circuit) : [];
    });
  },
};
