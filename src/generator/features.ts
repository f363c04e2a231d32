/** What makes a question hard, read off its circuit, scenario and solution. */
import type { Circuit, Step } from '../../shared/circuit.ts';
import { Joining } from '../graph/index.ts';
import { type Plan, planOf } from '../solver/index.ts';
import type { Accepted } from './accept.ts';

export interface Features {
  /** Longest chain of relays of which each is fed through a contact of the one before. */
  readonly levels: number;
  /** Contacts in the networks of the loads and coils asked about, per network. */
  readonly contacts: number;
  /** Ways beside one another in all networks: independent loops of contacts. */
  readonly parallel: number;
  /** Contacts drawn on another sheet than their coil, or carrying another supply. */
  readonly elsewhere: number;
  /** Relays that feed back on themselves or remember. */
  readonly memories: number;
  readonly timers: number;
  readonly acts: number;
  readonly faults: number;
  readonly asked: number;
  readonly tellsApart: number;
}

/** A network: contacts and loads that hang together once the supplies' poles are taken out. */
interface Network {
  readonly switches: number[];
  readonly loads: number[];
}

const isFeed = (plan: Plan, mechanism: number): boolean => plan.mechanisms[mechanism]!.drive === 'feed';

/** Fuses, breakers and isolators, in: what lies on their two sides hangs together. */
const feedsIn = (plan: Plan) => plan.switches.filter(({ mechanism }) => isFeed(plan, mechanism));

/** Conductors that are a supply's pole, or behind a fuse, breaker or isolator of one, with the supply's name. */
function railsOf(plan: Plan): ReadonlyMap<number, string> {
  const joining = new Joining(plan.nodes);
  for (const { a, b } of feedsIn(plan)) joining.join(a, b);
  const byRoot = new Map<number, string>();
  for (const { poles, name } of plan.supplies)
    for (const { node } of poles) byRoot.set(joining.find(node), name);
  const rails = new Map<number, string>();
  for (let node = 0; node < plan.nodes; node++) {
    const name = byRoot.get(joining.find(node));
    if (name !== undefined) rails.set(node, name);
  }
  return rails;
}

function networksOf(plan: Plan, rails: ReadonlyMap<number, string>): Network[] {
  const joining = new Joining(plan.nodes);
  const ends = new Int32Array(plan.nodes);
  for (const node of plan.nodeOf.values()) ends[node]!++;
  // The leg that nobody wired is no way of its own.
  const ways = plan.switches.flatMap(({ a, b, mechanism }, index) =>
    isFeed(plan, mechanism) || ends[a]! < 2 || ends[b]! < 2 ? [] : [{ a, b, index, load: false }],
  );
  const parts = [...ways, ...plan.loads.map(({ a, b }, index) => ({ a, b, index, load: true }))];
  // What lies behind a contact and a fuse hangs on that contact all the same.
  for (const { a, b } of [...parts, ...feedsIn(plan)]) if (!rails.has(a) && !rails.has(b)) joining.join(a, b);
  const networks = new Map<string, Network>();
  parts.forEach(({ a, b, index, load }, part) => {
    const inner = rails.has(a) ? (rails.has(b) ? undefined : b) : a;
    const key = inner === undefined ? `alone ${part}` : String(joining.find(inner));
    const network = networks.get(key) ?? { switches: [], loads: [] };
    networks.set(key, network);
    (load ? network.loads : network.switches).push(index);
  });
  return [...networks.values()].filter(({ loads }) => loads.length > 0);
}

/** Independent loops of a network's contacts, all poles taken as one point. */
function loops(plan: Plan, rails: ReadonlyMap<number, string>, { switches }: Network): number {
  const joining = new Joining(plan.nodes + 1);
  const point = (node: number): number => (rails.has(node) ? plan.nodes : node);
  for (const { a, b } of feedsIn(plan)) joining.join(point(a), point(b));
  return switches.filter((index) => {
    const { a, b } = plan.switches[index]!;
    return !joining.join(point(a), point(b));
  }).length;
}

/** For each mechanism those whose coils its contacts bear on. */
function influences(plan: Plan, networks: readonly Network[]): ReadonlySet<number>[] {
  const bears = plan.mechanisms.map(() => new Set<number>());
  for (const { switches, loads } of networks) {
    const coils = loads.map((load) => plan.loads[load]!.mechanism).filter((mechanism) => mechanism >= 0);
    for (const index of switches) for (const coil of coils) bears[plan.switches[index]!.mechanism]!.add(coil);
  }
  return bears;
}

function longestChain(plan: Plan, bears: readonly ReadonlySet<number>[]): number {
  const known = new Map<number, number>();
  const under = new Set<number>();
  const from = (mechanism: number): number => {
    const before = known.get(mechanism);
    if (before !== undefined) return before;
    if (under.has(mechanism)) return 0;
    under.add(mechanism);
    let longest = 0;
    for (const next of bears[mechanism]!) longest = Math.max(longest, from(next));
    under.delete(mechanism);
    known.set(mechanism, longest + 1);
    return longest + 1;
  };
  const coils = plan.mechanisms
    .map((_, index) => index)
    .filter((index) => plan.loads.some((load) => load.mechanism === index));
  return coils.reduce((longest, coil) => Math.max(longest, from(coil)), 0);
}

function elsewhere(circuit: Circuit, plan: Plan): number {
  const coils = new Map<string, { sheet: number; supply: string }>();
  const rails = railsOf(plan);
  const supplyOf = (steps: Circuit['paths'][number]['steps']): string => {
    for (const { device, enter } of steps) {
      const name = rails.get(plan.nodeOf.get(`${device}:${enter}`) ?? -1);
      if (name !== undefined) return name;
    }
    return '';
  };
  const coilEnds = new Set(
    plan.loads.flatMap(({ device, from, mechanism }) => (mechanism < 0 ? [] : [`${device}:${from}`])),
  );
  const stops = circuit.paths.flatMap(({ sheet, steps }) => {
    const supply = supplyOf(steps);
    return steps.filter(({ leave }) => leave !== undefined).map((step) => ({ ...step, sheet, supply }));
  });
  const isCoil = ({ device, enter }: Step): boolean => coilEnds.has(`${device}:${enter}`);
  for (const stop of stops) if (isCoil(stop)) coils.set(stop.device, stop);
  return stops.filter((stop) => {
    const coil = coils.get(stop.device);
    return (
      !isCoil(stop) &&
      coil &&
      (coil.sheet !== stop.sheet || (stop.supply !== '' && coil.supply !== stop.supply))
    );
  }).length;
}

/** Reads the features of an accepted draft. */
export function featuresOf({ draft, tellsApart }: Accepted): Features {
  const { circuit, scenario, lamps, inputs, relays } = draft;
  const plan = planOf(circuit);
  const rails = railsOf(plan);
  const networks = networksOf(plan, rails);
  const bears = influences(plan, networks);
  const asked = new Set([...lamps, ...inputs, ...relays]);
  const about = networks.filter(({ loads }) => loads.some((load) => asked.has(plan.loads[load]!.id)));
  const contacts = about.reduce((sum, { switches }) => sum + switches.length, 0);
  const drives = plan.mechanisms.map(({ drive }) => drive);
  return {
    levels: longestChain(plan, bears),
    contacts: about.length === 0 ? 0 : contacts / about.length,
    parallel: networks.reduce((sum, network) => sum + loops(plan, rails, network), 0),
    elsewhere: elsewhere(circuit, plan),
    memories: bears.filter((set, mechanism) => set.has(mechanism) || drives[mechanism] === 'latch').length,
    timers: plan.mechanisms.filter(({ delays }) => delays.length > 0).length,
    acts: scenario.acts.length,
    faults: scenario.faults.length,
    asked: asked.size,
    tellsApart: tellsApart.length,
  };
}
