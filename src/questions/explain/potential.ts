/** Where a terminal gets its potential from: the pole that closed contacts join it to, or loads, or nothing. */
import type { Blocker, TraceHop } from '../../../shared/solution.ts';
import { isClosed, type Machine, machineOf, type State, traceLoad } from '../../solver/index.ts';
import { openBesides, type Standing } from './series.ts';

export interface Reach {
  /** `A:L`. */
  readonly pole: string;
  readonly supply: string;
  /** Contacts and loads between, from the terminal to the pole. */
  readonly hops: readonly TraceHop[];
  /** Loads among them. */
  readonly loads: readonly string[];
  /** A dirty contact among them. */
  readonly dirty: boolean;
}

interface Edge {
  readonly node: number;
  readonly hop: TraceHop | undefined;
  readonly load: string | undefined;
  readonly dirt: boolean;
}

function edgesOf(machine: Machine, state: State): ReadonlyMap<number, readonly Edge[]> {
  const { plan } = machine;
  const edges = new Map<number, Edge[]>();
  const link = (
    a: number,
    b: number,
    part: { device: string; from: string; to: string } | undefined,
    load?: string,
    dirt = false,
  ): void => {
    for (const [one, other, enter, leave] of [
      [a, b, part?.from, part?.to],
      [b, a, part?.to, part?.from],
    ] as const) {
      const hop = part && { device: part.device, enter: enter!, leave: leave! };
      const list = edges.get(one);
      const edge = { node: other, hop, load, dirt };
      if (list) list.push(edge);
      else edges.set(one, [edge]);
    }
  };
  for (const [a, b] of plan.joins) link(a, b, undefined);
  plan.switches.forEach((part, index) => {
    if (isClosed(machine, state.at, index)) link(part.a, part.b, part);
  });
  for (const part of plan.loads) {
    if (part.siemens === 0) continue;
    // The inside of a dirty contact is part of the contact, which is shown as one.
    if (part.role === 'dirt') link(part.a, part.b, undefined, undefined, true);
    else link(part.a, part.b, part, part.device);
  }
  return edges;
}

/** The nearest pole of a supply that is on: through as few loads as can be, then as few contacts. */
export function reachOf(machine: Machine, state: State, terminal: string): Reach | undefined {
  const { plan } = machine;
  const edges = edgesOf(machine, state);
  const poles = new Map<number, { pole: string; supply: string }>();
  plan.supplies.forEach(({ name, poles: all }, index) => {
    if (!state.supplyOn[index]) return;
    for (const { node, terminal: at } of all) poles.set(node, { pole: `${name}:${at}`, supply: name });
  });
  const start = plan.nodeOf.get(terminal)!;
  let layer: { node: number; way: Omit<Reach, 'pole' | 'supply'> }[] = [
    { node: start, way: { hops: [], loads: [], dirty: false } },
  ];
  const seen = new Set([start]);
  // Breadth first within what closed contacts join, then on through one more load.
  while (layer.length > 0) {
    const beyond: typeof layer = [];
    for (const { node, way } of layer) {
      const found = poles.get(node);
      if (found) return { ...found, ...way };
      for (const edge of edges.get(node) ?? []) {
        const next = {
          node: edge.node,
          way: {
            hops: edge.hop ? [...way.hops, edge.hop] : way.hops,
            loads: edge.load === undefined ? way.loads : [...way.loads, edge.load],
            dirty: way.dirty || edge.dirt,
          },
        };
        if (edge.load !== undefined || edge.dirt) beyond.push(next);
        else if (!seen.has(edge.node)) {
          seen.add(edge.node);
          layer.push(next);
        }
      }
    }
    layer = beyond.filter(({ node }) => !seen.has(node));
    for (const { node } of layer) seen.add(node);
  }
  return undefined;
}

const PROBE = 'between';

/** The machine with a load of next to nothing between a terminal and a supply's return, so that it can be traced. */
function probed(machine: Machine, state: State, terminal: string, supply: string): Standing {
  const { plan } = machine;
  const probe = {
    id: PROBE,
    device: PROBE,
    from: '1',
    to: '2',
    a: plan.nodeOf.get(terminal)!,
    b: plan.supplies.find(({ name }) => name === supply)!.poles.at(-1)!.node,
    role: 'lamp' as const,
    siemens: 1e-12,
    volts: 1,
    mechanism: -1,
    dead: false,
  };
  const volts = state.volts.map((along) => Float64Array.from([...along, 0]));
  return { machine: machineOf({ ...plan, loads: [...plan.loads, probe] }), state: { ...state, volts } };
}

/** What keeps a terminal from a supply, and what is open besides. */
export interface Kept {
  readonly stoppedBy: readonly Blocker[];
  readonly besides: readonly Blocker[];
}

/**
 * The open contacts that keep a terminal from the line poles of a supply: what the solver's trace says of a load between
 * the terminal and that supply's return.
 */
export function stoppedAt(
  machine: Machine,
  state: State,
  terminal: string,
  supply: string,
): readonly Blocker[] {
  const probe = probed(machine, state, terminal, supply);
  return traceLoad(probe.machine, probe.state, PROBE)?.stoppedBy ?? [];
}

/** As `stoppedAt`, of the first supply that could reach the terminal at all. */
export const stopsBefore = (machine: Machine, state: State, terminal: string): readonly Blocker[] =>
  keptFrom(machine, state, terminal)?.stoppedBy ?? [];

/** The first supply that could reach a terminal at all, and what keeps it from there; undefined where none could. */
function keptFrom(
  machine: Machine,
  state: State,
  terminal: string,
): { readonly supply: string; readonly stoppedBy: readonly Blocker[] } | undefined {
  for (const { name } of machine.plan.supplies) {
    const stoppedBy = stoppedAt(machine, state, terminal, name);
    if (stoppedBy.length > 0) return { supply: name, stoppedBy };
  }
  return undefined;
}

/** What keeps a dead terminal from the first supply that could reach it: all that is open on the way. */
export function keptDead(machine: Machine, state: State, terminal: string): Kept {
  const kept = keptFrom(machine, state, terminal);
  if (!kept) return { stoppedBy: [], besides: [] };
  const { supply, stoppedBy } = kept;
  const standing = probed(machine, state, terminal, supply);
  return { stoppedBy, besides: openBesides(standing, PROBE, stoppedBy, traceLoad) };
}
