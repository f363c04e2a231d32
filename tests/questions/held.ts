/** Sentences of explanations held against the solver's state, and against a network solved another way. */
import { expect } from 'vitest';
import type { Blocker } from '../../shared/solution.ts';
import { randomOf } from '../../src/generator/index.ts';
import { Joining } from '../../src/graph/index.ts';
import type { History } from '../../src/questions/explain/history.ts';
import { loadsOf } from '../../src/questions/explain/standing.ts';
import type { ExplanationStep } from '../../src/questions/said.ts';
import { advance, copyState, isClosed, type Machine, type State } from '../../src/solver/index.ts';
import type { ExplainingSaid, Feed, FeedPart, Hop, PlaceSaid } from '../../src/words/index.ts';
import { nodeVolts } from '../support/naive-network.ts';
import type { Wiring } from '../support/wiring.ts';

/** Everything in a statement that looks so, however deep. */
function within<T>(value: unknown, is: (value: object) => boolean): T[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.values(value).flatMap((each) => within<T>(each, is));
  return is(value) ? [value as T, ...inside] : inside;
}

const feedsIn = (said: ExplainingSaid): Feed[] =>
  within(said, (value) => 'through' in value && 'back' in value);
const contactsOpen = (value: unknown): Hop[] =>
  within<PlaceSaid>(value, (each) => 'says' in each && 'contact' in each).flatMap((place) =>
    'contact' in place && !place.says.startsWith('closed') ? [place.contact] : [],
  );

/** A statement without what is open besides. */
const withoutBesides = (said: ExplainingSaid): ExplainingSaid =>
  JSON.parse(JSON.stringify(said, (key, value: unknown) => (key === 'besides' ? undefined : value)));

/** Contacts that are said to be open by themselves. */
export const openIn = (said: ExplainingSaid): Hop[] => contactsOpen(withoutBesides(said));

/** Places that are said to be open besides. */
export const besidesIn = (said: ExplainingSaid): PlaceSaid[] =>
  within<{ besides: readonly PlaceSaid[] }>(said, (value) => 'besides' in value).flatMap(
    ({ besides }) => besides,
  );

/** How many places are said to be open. */
const placesIn = (said: ExplainingSaid): number =>
  within<{ open: readonly unknown[] }>(said, (value) => 'open' in value).reduce(
    (sum, { open }) => sum + open.length,
    0,
  );

const partOf = ({ plan }: Machine, { device, enter, leave }: Hop): number =>
  plan.switches.findIndex(
    (part) =>
      part.device === device &&
      ((part.from === enter && part.to === leave) || (part.from === leave && part.to === enter)),
  );

/** What keeps a way from being one, in a state. */
function faultsOf({ machine, circuit }: History, item: string, feed: Feed, state: State): string[] {
  const { plan } = machine;
  const faults: string[] = [];
  const nodeOf = (terminal: string): number => plan.nodeOf.get(terminal) ?? -1;
  // A short-circuited load is no load any more.
  const joined = (one: number, other: number): boolean =>
    one === other || plan.joins.some((pair) => pair.includes(one) && pair.includes(other));
  const [from, to] = [feed.from, feed.to].map((pole) => pole.split(':')[0]!);
  if (from !== to) faults.push(`${feed.from} and ${feed.to} are poles of two supplies`);
  const gone = (start: string, hops: readonly Hop[]): number => {
    let at = nodeOf(start);
    for (const hop of hops) {
      if (circuit.supplies.some(({ name }) => name === hop.device))
        faults.push(`through supply ${hop.device}`);
      const enter = nodeOf(`${hop.device}:${hop.enter}`);
      if (!joined(at, enter)) faults.push(`no conductor to ${hop.device}:${hop.enter}`);
      if (hop.leave === undefined) {
        at = enter;
        continue;
      }
      const part = partOf(machine, hop);
      const load = plan.loads.some(
        ({ device, from }) => device === hop.device && [hop.enter, hop.leave].includes(from),
      );
      if (part < 0 && !load) faults.push(`nothing between ${hop.device}:${hop.enter} and ${hop.leave}`);
      if (part >= 0 && !isClosed(machine, state.at, part))
        faults.push(`${hop.device}:${hop.enter}-${hop.leave} is open`);
      at = nodeOf(`${hop.device}:${hop.leave}`);
    }
    return at;
  };
  const hopsOf = (parts: Feed['through']): Hop[] => parts.flatMap(({ hops }) => hops);
  const high = gone(feed.from, hopsOf(feed.through));
  const turned = hopsOf(feed.back)
    .reverse()
    .map(
      ({ device, enter, leave }): Hop =>
        leave === undefined ? { device, enter } : { device, enter: leave, leave: enter },
    );
  const low = gone(feed.to, turned);
  const device = item.split(':')[0]!;
  const ends = plan.loads.filter((load) => load.device === device).flatMap(({ a, b }) => [a, b]);
  for (const end of [high, low])
    if (!ends.some((node) => joined(node, end))) faults.push(`doesn't come to ${item}`);
  return faults;
}

/** Volts between two nodes in a network in which every contact is closed but some. */
const voltsWithout = (
  machine: Machine,
  state: State,
  open: ReadonlySet<number>,
  pair: readonly [number, number],
): number => voltsBetween(machine, state, (index) => !open.has(index), pair);

/** Volts between two nodes as everything stands, with some open places closed and supplies on besides. */
function voltsWith(
  machine: Machine,
  state: State,
  closed: ReadonlySet<number>,
  supplies: readonly string[],
  pair: readonly [number, number],
): number {
  const { plan } = machine;
  const on = { ...state, supplyOn: state.supplyOn.slice() };
  plan.supplies.forEach(({ name }, index) => {
    if (supplies.includes(name)) on.supplyOn[index] = 1;
  });
  // The main contacts of a contactor close together.
  const poles = new Set(
    [...closed].flatMap((index) => (plan.switches[index]!.main ? [plan.switches[index]!.mechanism] : [])),
  );
  return voltsBetween(
    machine,
    on,
    (index) =>
      closed.has(index) ||
      isClosed(machine, state.at, index) ||
      (plan.switches[index]!.main && poles.has(plan.switches[index]!.mechanism)),
    pair,
  );
}

function voltsBetween(
  { plan }: Machine,
  state: State,
  isShut: (part: number) => boolean,
  [a, b]: readonly [number, number],
): number {
  const random = randomOf(`${a} ${b}`);
  const node = String;
  const wiring: Wiring = {
    terminals: Array.from({ length: plan.nodes }, (_, index) => node(index)),
    joined: plan.joins.map(([one, other]) => [node(one), node(other)] as const),
    resistors: [
      ...plan.switches.flatMap(({ a, b }, index) =>
        !isShut(index)
          ? []
          : [{ name: '', from: node(a), to: node(b), ohms: 0.01 + random.int(1, 1000) / 1000 }],
      ),
      ...plan.loads.flatMap(({ a, b, siemens }) =>
        siemens === 0 ? [] : [{ name: '', from: node(a), to: node(b), ohms: 1 / siemens }],
      ),
      // A voltmeter between the two: what hangs free beside an unearthed supply shows nothing.
      { name: '', from: node(a), to: node(b), ohms: 1e5 },
    ],
    sources: plan.supplies.flatMap(({ name, poles }, index) =>
      state.supplyOn[index]
        ? poles.slice(0, -1).map(({ node: plus, direct, re, im }) => ({
            supply: name,
            plus: node(plus),
            minus: node(poles.at(-1)!.node),
            direct,
            re,
            im,
          }))
        : [],
    ),
    earths: plan.supplies.filter(({ earthed }) => earthed).map(({ poles }) => node(poles.at(-1)!.node)),
  };
  return Math.hypot(
    ...(['direct', 're', 'im'] as const).map((part) => {
      const volts = nodeVolts(wiring, part);
      return volts.get(node(a))! - volts.get(node(b))!;
    }),
  );
}

/** Whether two nodes hang together, every contact being closed: by conductors, loads, supplies or the earth. */
function couldBeJoined({ plan }: Machine, [a, b]: readonly [number, number]): boolean {
  const joining = new Joining(plan.nodes);
  for (const [one, other] of plan.joins) joining.join(one, other);
  for (const part of [...plan.switches, ...plan.loads]) joining.join(part.a, part.b);
  const earthed = plan.supplies.flatMap((supply) => (supply.earthed ? [supply.poles.at(-1)!.node] : []));
  for (const { poles } of plan.supplies) for (const { node } of poles) joining.join(node, poles[0]!.node);
  for (const node of earthed) joining.join(node, earthed[0]!);
  return joining.find(a) === joining.find(b);
}

/** The states that follow one another while a flasher runs. */
function phasesOf(machine: Machine, from: State): State[] {
  const state = copyState(from);
  return Array.from({ length: 8 }, () => {
    const phase = copyState(state);
    const due = Math.min(...state.due);
    if (due !== Infinity) advance(machine, state, due - state.now);
    return phase;
  });
}

/** Loads that are said to be stopped: of a relay that has two coils the one that is told of. */
function stoppedLoads(history: History, said: ExplainingSaid): string[] {
  if (said.says !== 'stands' || !('item' in said)) return [];
  const { why, item } = said;
  const [reason] = [why, ...('why' in why ? [why.why] : [])].slice(-1);
  if (reason?.says !== 'stopped') return [];
  const { loads } = history.machine.plan;
  const told = why.says === 'unsupplied' ? 'supply' : why.says === 'notSet' ? 'set' : undefined;
  return told
    ? loads.flatMap(({ id, device, role }) => (device === item && role === told ? [id] : []))
    : loadsOf(history, item);
}

/** How much has been held against something. */
export interface Counted {
  ways: number;
  stops: number;
  cuts: number;
  /** Loads with something open besides. */
  series: number;
}

export const nothingYet = (): Counted => ({ ways: 0, stops: 0, cuts: 0, series: 0 });

/** What stops a load, and what is open besides. */
interface Stops {
  readonly stoppedBy: readonly Blocker[];
  readonly besides: readonly Blocker[];
}

/** Whether a load has voltage with some open places closed, and nothing else. */
function fedWith({ machine }: History, state: State, blockers: readonly Blocker[], id: string): boolean {
  const { supplies, loads } = machine.plan;
  const { a, b, volts } = loads.find((load) => load.id === id)!;
  const parts = blockers.map((blocker) => partOf(machine, blocker)).filter((part) => part >= 0);
  const off = supplies.flatMap(({ name }) => (blockers.some(({ device }) => device === name) ? [name] : []));
  return voltsWith(machine, state, new Set(parts), off, [a, b]) > 1e-4 * volts;
}

/** Loads of a state that have been held; many things asked hang on one coil. */
const complete = new WeakMap<State, Set<string>>();

/**
 * All that is named as open is all that would have to close: with that closed, and nothing else, the load is fed, and with the
 * first of it closed it is so only where nothing is open besides.
 */
function holdComplete(history: History, state: State, load: string, stops: Stops, text: string): void {
  const { stoppedBy, besides } = stops;
  const known = complete.get(state) ?? new Set<string>();
  complete.set(state, known);
  if (known.has(load)) return;
  known.add(load);
  expect(fedWith(history, state, stoppedBy, load), text).toBe(besides.length === 0);
  expect(fedWith(history, state, [...stoppedBy, ...besides], load), text).toBe(true);
}

/** Holds one sentence against the state that it is told of: what feeds, what is open, and that it stops what it is said to stop. */
export function hold(
  history: History,
  { said }: ExplanationStep,
  after: number,
  about: string,
  counted: Counted,
  isBrief = false,
): void {
  const { machine, stages } = history;
  const { state } = stages[after]!;
  const text = `${about}: ${JSON.stringify(said)}`;
  const restless = said.says === 'flashes' || said.says === 'neverFed';
  const moments = restless ? phasesOf(machine, state) : [state];
  const item = 'item' in said ? said.item : '';
  for (const feed of feedsIn(said)) {
    counted.ways++;
    expect(
      moments.map((moment) => faultsOf(history, item, feed, moment)),
      text,
    ).toContainEqual([]);
  }
  for (const contact of openIn(said)) {
    counted.stops++;
    const part = partOf(machine, contact);
    expect(part, text).toBeGreaterThanOrEqual(0);
    expect(
      moments.some((moment) => !isClosed(machine, moment.at, part)),
      text,
    ).toBe(true);
  }
  if (restless) return;
  for (const load of stoppedLoads(history, said)) {
    const trace = history.trace(after, load);
    // Of a motor's windings one is told of; a supply that is off is no contact.
    if (!trace || trace.fed || trace.stoppedBy.length === 0) continue;
    const named = new Set(trace.stoppedBy.map((blocker) => partOf(machine, blocker)));
    if (named.has(-1)) continue;
    counted.cuts++;
    if (loadsOf(history, item).length === 1) {
      for (const contact of openIn(said)) expect(named, text).toContain(partOf(machine, contact));
      expect(placesIn(said), text).toBe(trace.stoppedBy.length);
    }
    const { a, b, volts } = machine.plan.loads.find(({ id }) => id === load)!;
    expect(voltsWithout(machine, state, named, [a, b]), text).toBeLessThan(1e-4 * volts);
    // Of a motor's windings one is told of, and whoever had it right is told the first alone.
    if (isBrief || loadsOf(history, item).length > 1) continue;
    const besides = history.besides(after, load);
    if (besides.length > 0) counted.series++;
    expect(besidesIn(said), text).toHaveLength(besides.length);
    for (const place of besidesIn(said))
      if ('contact' in place)
        expect(isClosed(machine, state.at, partOf(machine, place.contact)), text).toBe(false);
    holdComplete(history, state, load, { stoppedBy: trace.stoppedBy, besides }, text);
  }
}

/** Contacts that a terminal is said to be joined by are closed, one after the other, from the one end to the other. */
export function holdJoined(
  { machine, stages }: History,
  { from, to, by }: { readonly from: string; readonly to: string; readonly by: readonly FeedPart[] },
  about: string,
  counted: Counted,
): void {
  const { plan } = machine;
  const { state } = stages.at(-1)!;
  counted.ways++;
  let at = plan.nodeOf.get(from)!;
  for (const hop of by.flatMap(({ hops }) => hops)) {
    const part = partOf(machine, hop);
    if (part >= 0) expect(isClosed(machine, state.at, part), `${about}: ${JSON.stringify(hop)}`).toBe(true);
    expect(plan.nodeOf.get(`${hop.device}:${hop.enter}`), `${about}: ${JSON.stringify(hop)}`).toBe(at);
    at = plan.nodeOf.get(`${hop.device}:${hop.leave}`)!;
  }
  expect(at, `${about}: ${from} to ${to}`).toBe(plan.nodeOf.get(to));
}

/**
 * Open contacts that keep a terminal dead are open, and with all others closed keep it from a supply that would reach it; with
 * them and what is open besides closed, and nothing else, it is live.
 */
export function holdDead(
  { machine, stages }: History,
  { terminal, open, besides }: { terminal: string; open: readonly Hop[]; besides: readonly PlaceSaid[] },
  about: string,
  counted: Counted,
): void {
  const { plan } = machine;
  const { state } = stages.at(-1)!;
  const parts = open.map((contact) => partOf(machine, contact));
  const further = besides.flatMap((place) => ('contact' in place ? [partOf(machine, place.contact)] : []));
  for (const part of [...parts, ...further]) {
    counted.stops++;
    expect(isClosed(machine, state.at, part), about).toBe(false);
  }
  const at = plan.nodeOf.get(terminal)!;
  const kept = plan.supplies.filter(({ supply, poles }) => {
    const pair = [at, poles.at(-1)!.node] as const;
    // Between what nothing joins there is no voltage to be kept away.
    if (!couldBeJoined(machine, pair)) return false;
    const without = voltsWithout(machine, state, new Set(parts), pair);
    return without < 1e-4 * supply.volts && voltsWithout(machine, state, new Set(), pair) > without;
  });
  counted.cuts++;
  expect(kept.length, about).toBeGreaterThan(0);
  if (further.length < besides.length) return;
  if (further.length > 0) counted.series++;
  const liveWith = (closed: readonly number[]): boolean =>
    kept.some(
      ({ supply, poles }) =>
        voltsWith(machine, state, new Set(closed), [], [at, poles.at(-1)!.node]) > 1e-4 * supply.volts,
    );
  expect(liveWith(parts), about).toBe(further.length === 0);
  expect(liveWith([...parts, ...further]), about).toBe(true);
}
