import type { Supply } from '../../../shared/circuit.ts';
import { type Load, readAs } from '../anatomy/index.ts';
import type { CircuitView } from '../view.ts';
import { linksOf, neighboursOf, type Pole, polesOf, reach } from './closable.ts';
import { isInner, loadsOf, type PlacedLoad } from './parts.ts';
import type { Broken, DrawingRule } from './rule.ts';

/** IEC 61810-1 and IEC 60947-4-1: a coil works from 85 % to 110 % of its rated voltage (from memory). */
const LEAST = 0.85;
const MOST = 1.1;

const fits = (rated: number, volts: number): boolean =>
  volts >= LEAST * rated - 1e-9 && volts <= MOST * rated + 1e-9;

/** Volts between two poles of one supply, and the kind of current. */
function between(
  { volts, current }: Supply,
  one: Pole,
  other: Pole,
): { volts: number; current: 'AC' | 'DC' } {
  if (current !== '3AC') return { volts, current };
  return { volts: one.isReturn || other.isReturn ? volts / Math.sqrt(3) : volts, current: 'AC' };
}

type Reachable = (terminal: string) => readonly Pole[];

/** The poles that each conductor could be brought to by closing contacts. */
function reachable(view: CircuitView): Reachable {
  const neighbours = neighboursOf(view, linksOf(view));
  const { of } = view.conductors;
  const poles = new Map<number, Pole[]>();
  for (const pole of polesOf(view)) {
    for (const at of reach(of.get(pole.ref)!, neighbours).keys()) {
      const list = poles.get(at);
      if (list) list.push(pole);
      else poles.set(at, [pole]);
    }
  }
  return (terminal) => poles.get(of.get(terminal as `${string}:${string}`) ?? -1) ?? [];
}

interface Fed {
  readonly supply: Supply;
  readonly volts: number;
  readonly current: 'AC' | 'DC';
}

/** Every way in which a part between two terminals can be fed, loads in series left aside. */
function waysToFeed({ from, to }: PlacedLoad, view: CircuitView, at: Reachable): Fed[] {
  return at(from).flatMap((one) =>
    at(to).flatMap((other) => {
      const supply = view.supplies.get(one.supply);
      if (!supply || one.supply !== other.supply || one.terminal === other.terminal) return [];
      return [{ supply, ...between(supply, one, other) }];
    }),
  );
}

function loadFinding(placed: PlacedLoad, view: CircuitView, at: Reachable): Broken | undefined {
  const { part, load, from, to, named } = placed;
  const concern = { kind: 'device', index: part.index, terminal: load.from } as const;
  const ways = waysToFeed(placed, view, at);
  const [first] = ways;
  if (!first) {
    const names = (terminal: string) => new Set(at(terminal).map(({ supply }) => supply));
    const [one, other] = [names(from), names(to)];
    if (one.size === 0 || other.size === 0 || [...one].some((name) => other.has(name))) return undefined;
    return {
      said: { says: 'wrong-voltage.apart', load: named, one: [...one], other: [...other] },
      concern,
    };
  }
  const good = ways.some(
    ({ volts, current }) =>
      fits(load.volts, volts) && (load.current === undefined || load.current === current),
  );
  if (good) return undefined;
  const { supply, volts, current } = first;
  return {
    said: {
      says: load.role === 'input' ? 'wrong-voltage.input' : 'wrong-voltage',
      load: named,
      rated: { volts: load.volts, current: load.current },
      supply: supply.name,
      gets: { volts, current },
    },
    concern,
  };
}

const isWinding = ({ role }: Load): boolean => readAs(role) === 'winding';

/** Three-phase motors: in delta a winding gets the voltage between two phases, in star that divided by the root of three. */
function motorFinding(windings: readonly PlacedLoad[], view: CircuitView, at: Reachable): Broken | undefined {
  const { part, load } = windings[0]!;
  const motor = part.device.name;
  const concern = { kind: 'device', index: part.index, terminal: load.from } as const;
  const supplies = new Set(
    windings
      .flatMap(({ from, to }) => [...at(from), ...at(to)])
      .map(({ supply }) => view.supplies.get(supply)!),
  );
  for (const { name: supply, current, volts } of supplies) {
    if (current !== '3AC') {
      return { said: { says: 'wrong-voltage.phases', motor, supply, current }, concern };
    }
    const delta = windings.some((each) => waysToFeed(each, view, at).length > 0);
    const gets = delta ? volts : volts / Math.sqrt(3);
    if (fits(load.volts, gets)) continue;
    const joined = delta ? 'delta' : 'star';
    const winding = { motor, volts: load.volts, supply, gets };
    return {
      said: isInner(load.to)
        ? { says: 'wrong-voltage.winding', ...winding, joined }
        : { says: `wrong-voltage.${joined}`, ...winding },
      concern,
    };
  }
  return undefined;
}

export const wrongVoltage: DrawingRule = {
  name: 'wrong-voltage',
  check(_circuit, view) {
    const at = reachable(view);
    const loads = loadsOf(view);
    const motors = new Map<string, PlacedLoad[]>();
    for (const placed of loads.filter(({ load }) => isWinding(load))) {
      const { name } = placed.part.device;
      motors.set(name, [...(motors.get(name) ?? []), placed]);
    }
    return [
      ...loads
        .filter(({ load }) => !isWinding(load) && !isInner(load.to))
        .map((placed) => loadFinding(placed, view, at)),
      ...[...motors.values()].map((windings) => motorFinding(windings, view, at)),
    ].filter((found) => found !== undefined);
  },
};
