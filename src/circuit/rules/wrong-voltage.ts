import type { Supply } from '../../../shared/circuit.ts';
import type { Found } from '../findings.ts';
import type { CircuitView } from '../view.ts';
import { linksOf, neighboursOf, type Pole, polesOf, reach } from './closable.ts';
import { capital, isInner, loadsOf, type PlacedLoad } from './parts.ts';
import type { Rule } from './rule.ts';

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

const figure = (volts: number): string => `${Number(volts.toPrecision(3))} V`;

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

function loadFinding(placed: PlacedLoad, view: CircuitView, at: Reachable): Found | undefined {
  const { part, load, from, to, words } = placed;
  const concern = { kind: 'device', index: part.index, terminal: load.from } as const;
  const ways = waysToFeed(placed, view, at);
  const [first] = ways;
  const rated = `${load.volts} V${load.current ? ` ${load.current}` : ''}`;
  if (!first) {
    const names = (terminal: string) => new Set(at(terminal).map(({ supply }) => supply));
    const [one, other] = [names(from), names(to)];
    if (one.size === 0 || other.size === 0 || [...one].some((name) => other.has(name))) return undefined;
    return {
      message: `${capital(words)} has one side on the supply ${[...one].join(', ')} and the other on ${[...other].join(', ')}.`,
      hint: 'Bring both sides to the two poles of one supply: between isolated supplies no current flows.',
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
    message: `${capital(words)} is made for ${rated}, and the supply ${supply.name} gives it ${figure(volts)} ${current}.`,
    hint: `Feed it from a supply of ${rated}${load.role === 'input' ? ', or choose another type of input' : `, or fit one for ${figure(volts)} ${current}`}.`,
    concern,
  };
}

/** Three-phase motors: in delta a winding gets the voltage between two phases, in star that divided by the root of three. */
function motorFinding(windings: readonly PlacedLoad[], view: CircuitView, at: Reachable): Found | undefined {
  const { part, load } = windings[0]!;
  const { name } = part.device;
  const concern = { kind: 'device', index: part.index, terminal: load.from } as const;
  const supplies = new Set(
    windings
      .flatMap(({ from, to }) => [...at(from), ...at(to)])
      .map(({ supply }) => view.supplies.get(supply)!),
  );
  for (const { name: supply, current, volts } of supplies) {
    if (current !== '3AC') {
      return {
        message: `The motor ${name} is made for three phases, and the supply ${supply} is ${current}.`,
        hint: 'Feed it from a 3AC supply.',
        concern,
      };
    }
    const delta = windings.some((each) => waysToFeed(each, view, at).length > 0);
    const each = delta ? volts : volts / Math.sqrt(3);
    if (fits(load.volts, each)) continue;
    return {
      message: `A winding of ${name} is made for ${load.volts} V, and the supply ${supply} gives it ${figure(each)} in ${delta ? 'delta' : 'star'}.`,
      hint: `${isInner(load.to) ? 'Feed' : `Join it in ${delta ? 'star' : 'delta'}, or feed`} it from another supply, or fit a motor with windings for ${figure(each)}.`,
      concern,
    };
  }
  return undefined;
}

export const wrongVoltage: Rule = {
  name: 'wrong-voltage',
  reason:
    'A coil on too little voltage stays at rest; on too much, or on the wrong kind of current, it burns.',
  source:
    'IEC 61810-1 and IEC 60947-4-1: coils from 85 % to 110 % of rated voltage (from memory); inputs IEC 61131-2; the same band for other loads: common practice, no source',
  check(_circuit, view) {
    const at = reachable(view);
    const loads = loadsOf(view);
    const motors = new Map<string, PlacedLoad[]>();
    for (const placed of loads.filter(({ load }) => load.role === 'motor')) {
      const { name } = placed.part.device;
      motors.set(name, [...(motors.get(name) ?? []), placed]);
    }
    return [
      ...loads
        .filter(({ load }) => load.role !== 'motor' && !isInner(load.to))
        .map((placed) => loadFinding(placed, view, at)),
      ...[...motors.values()].map((windings) => motorFinding(windings, view, at)),
    ].filter((found) => found !== undefined);
  },
};
