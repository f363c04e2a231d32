/**
 * One row of columns before it has coordinates: which line each port stands on, in which channel each conductor
 * runs, and which ports reach it straight down or up their line and which by a riser at the column's right.
 */
import { isLoad, type Part, poleMechanism, type Run, type Survey } from '../parts/index.ts';
import { isAbove } from '../parts/survey.ts';
import { laneShifts } from './lanes.ts';
import { findLevels, type Levels, type Links } from './levels.ts';

/** A vertical line of a column: `shift` leg spacings (motors: phase spacings) from the column's own. */
export interface Lane {
  readonly column: number;
  readonly shift: number;
  readonly phase: number;
}

export interface Standing {
  readonly part: Part;
  readonly column: number;
  readonly row: number;
  readonly shift: number;
  readonly flipped: boolean;
  /** By spot. */
  readonly lanes: readonly Lane[];
  readonly lastOfRun: boolean;
  /** Linked to the part of the same mechanism in the column before: carries no name of its own. */
  readonly linked: boolean;
}

export interface Pin {
  readonly port: number;
  readonly part: number;
  readonly above: boolean;
}

/** Ports of one conductor on one line without a part between them. */
export interface Cluster {
  readonly lane: Lane;
  readonly pins: readonly Pin[];
  /** Channels its vertical passes through. */
  readonly from: number;
  readonly to: number;
  /** Reaches the trunk by this riser of its column, which it joins in channel `exit`. */
  riser?: Riser;
  exit?: number;
}

/** A line at the right of a column by which its ports reach a trunk that they cannot reach straight. */
export interface Riser {
  readonly column: number;
  readonly net: number;
  /** The channel of the trunk. */
  readonly trunk: number;
}

export interface Trunk {
  readonly net: number;
  readonly channel: number;
  readonly clusters: readonly Cluster[];
  /** Goes on in an earlier or a later row: what to write there. */
  readonly before: string;
  readonly after: string;
  /** The outermost lines that its ends, with their marks, must keep clear of. */
  readonly leftmost?: Lane;
  readonly rightmost?: Lane;
  readonly supply: boolean;
  /** Where the conductors of a three-phase supply all begin, so that they run one under another; and in which order. */
  readonly lead?: Lane;
  readonly phase?: number;
  /** False: all on one line, nothing to run sideways. */
  readonly sideways: boolean;
}

export interface Section {
  readonly columns: readonly Run[];
  readonly rows: number;
  readonly standing: readonly Standing[];
  readonly trunks: readonly Trunk[];
  /** By column, in the order they stand. */
  readonly risers: readonly (readonly Riser[])[];
}

export interface Ends {
  /** What a mark at the left end of this conductor says in this row, '' for none; and at its right end. */
  readonly before: (net: number, columns: readonly Run[]) => string;
  readonly after: (net: number, columns: readonly Run[]) => string;
}

/** Neighbouring columns' poles that one hand, trip or armature moves and that belong side by side. */
export function findLinks(drawn: Survey, columns: readonly Run[], levels: Levels): number[][] {
  const links: number[][] = [];
  const open = new Map<string, { column: number; parts: number[] }>();
  columns.forEach((run, column) => {
    for (const { part } of run.parts) {
      const mechanism = poleMechanism(drawn.parts[part]);
      if (!mechanism) continue;
      const last = open.get(mechanism);
      const near =
        last?.column === column - 1 &&
        Math.abs((levels.row[last.parts[0] as number] as number) - (levels.row[part] as number)) <= 1;
      if (last && near) {
        last.parts.push(part);
        last.column = column;
      } else {
        const parts = [part];
        open.set(mechanism, { column, parts });
        links.push(parts);
      }
    }
  });
  return links.filter((link) => link.length > 1);
}

const laneKey = ({ column, shift, phase }: Lane): number => column * 4096 + (shift + 32) * 16 + phase;

/** A motor's terminals stand on the lines of the columns that lead to them, where those are neighbours in order. */
function motorLanes(
  drawn: Survey,
  part: Part,
  column: number,
  shift: number,
  columns: readonly Run[],
): Lane[] {
  const first = drawn.wiring.firstPort[part.index] as number;
  const over = (upper: boolean): boolean =>
    [0, 1, 2].every((offset) => {
      const run = columns[column + offset];
      const spot = part.spots.findIndex((s) => (s.side === 'top') === upper && s.dx === offset);
      if (!run || spot < 0) return false;
      const net = drawn.wiring.netOfPort[first + spot] as number;
      if (net < 0) return false;
      const only = run.parts.some((item) => item.part === part.index);
      return (only ? offset === 0 : run.foot === net) && shift === 0;
    });
  const spread = over(true);
  return part.spots.map(({ dx }) =>
    spread ? { column: column + dx, shift: 0, phase: 0 } : { column, shift, phase: dx },
  );
}

/** One actuator moves all the contacts that the dashed line joins: it is drawn at the first. */
function withoutActuator({ actuator: _, ...part }: Part): Part {
  return part;
}

function stand(drawn: Survey, columns: readonly Run[], levels: Levels, links: Links): Standing[] {
  const linkedParts = new Set(links.flatMap((link) => link.slice(1)));
  return columns.flatMap((run, column) => {
    const shifts = laneShifts(drawn, run);
    return run.parts.map(({ part: index, flipped }, at): Standing => {
      const part = drawn.parts[index] as Part;
      const shift = shifts[at] ?? 0;
      const lanes =
        part.form === 'motor'
          ? motorLanes(drawn, part, column, shift, columns)
          : part.spots.map(({ dx }) => ({ column, shift: shift + dx, phase: 0 }));
      return {
        part: linkedParts.has(index) ? withoutActuator(part) : part,
        column,
        row: levels.row[index] as number,
        shift,
        flipped,
        lanes,
        lastOfRun: run.parts.slice(at + 1).every((later) => !isLoad(drawn.parts[later.part]?.form ?? 'make')),
        linked: linkedParts.has(index),
      };
    });
  });
}

/** Which rows of which columns are taken by parts, and which channels of which lines by conductors. */
class Occupied {
  private readonly rows: Uint8Array[];
  private readonly lanes = new Map<number, { from: number; to: number }[]>();
  private readonly ofColumn: Map<number, Lane>[];

  constructor(columns: number, rows: number, standing: readonly Standing[]) {
    this.rows = Array.from({ length: columns }, () => new Uint8Array(rows + 1));
    this.ofColumn = Array.from({ length: columns }, () => new Map<number, Lane>());
    for (const { row, column, lanes } of standing) {
      (this.rows[column] as Uint8Array)[row] = 1;
      for (const lane of lanes) (this.rows[lane.column] as Uint8Array)[row] = 1;
    }
  }

  /** No part stands on this column between the two channels. */
  rowsFree(column: number, from: number, to: number): boolean {
    const rows = this.rows[column] as Uint8Array;
    for (let row = from; row < to; row++) if (rows[row]) return false;
    return true;
  }

  laneFree(lane: Lane, from: number, to: number): boolean {
    return (this.lanes.get(laneKey(lane)) ?? []).every((taken) => taken.to < from || to < taken.from);
  }

  take(lane: Lane, from: number, to: number): void {
    const key = laneKey(lane);
    const list = this.lanes.get(key);
    if (list) list.push({ from, to });
    else this.lanes.set(key, [{ from, to }]);
    this.ofColumn[lane.column]?.set(key, lane);
  }

  /** The column's lines on which a conductor stands in this channel. */
  linesIn(column: number, channel: number): Lane[] {
    return [...(this.ofColumn[column] ?? [])]
      .filter(([key]) => this.lanes.get(key)?.some(({ from, to }) => from <= channel && channel <= to))
      .map(([, lane]) => lane);
  }
}

function clustersOf(
  drawn: Survey,
  columns: readonly Run[],
  standing: ReadonlyMap<number, Standing>,
  taken: Occupied,
): Map<number, Cluster[]> {
  const byNet = new Map<number, Cluster[]>();
  const add = (net: number, cluster: Cluster): void => {
    const list = byNet.get(net);
    if (list) list.push(cluster);
    else byNet.set(net, [cluster]);
  };
  const { wiring } = drawn;
  const joined = new Set<number>();
  const pinOf = (port: number): Pin => ({
    port,
    part: wiring.partOfPort[port] as number,
    above: isAbove(drawn, port),
  });
  const laneOf = (port: number): Lane => {
    const place = standing.get(wiring.partOfPort[port] as number) as Standing;
    return place.lanes[wiring.spotOfPort[port] as number] as Lane;
  };
  const rowOf = (port: number): number => standing.get(wiring.partOfPort[port] as number)?.row ?? 0;
  for (const run of columns)
    run.parts.forEach((item, index) => {
      const next = run.parts[index + 1];
      if (!next || item.below < 0 || next.above < 0) return;
      const [upper, lower] = [item.below, next.above];
      const net = wiring.netOfPort[upper] as number;
      if (net < 0 || net !== wiring.netOfPort[lower] || isAbove(drawn, upper) || !isAbove(drawn, lower))
        return;
      const [from, to] = [rowOf(upper) + 1, rowOf(lower)];
      if (laneKey(laneOf(upper)) !== laneKey(laneOf(lower)) || to < from) return;
      joined.add(upper).add(lower);
      add(net, { lane: laneOf(upper), pins: [pinOf(upper), pinOf(lower)], from, to });
    });
  for (const place of standing.values()) {
    const first = wiring.firstPort[place.part.index] as number;
    place.part.spots.forEach((_, spot) => {
      const port = first + spot;
      const net = wiring.netOfPort[port] as number;
      if (net < 0 || joined.has(port)) return;
      const pin = pinOf(port);
      const channel = pin.above ? place.row : place.row + 1;
      add(net, { lane: laneOf(port), pins: [pin], from: channel, to: channel });
    });
  }
  for (const [net, clusters] of byNet) byNet.set(net, facing(clusters, taken));
  return byNet;
}

/** Two ports that face each other on one line with nothing between are joined straight. */
function facing(clusters: readonly Cluster[], taken: Occupied): Cluster[] {
  const joined: Cluster[] = [];
  for (const cluster of clusters) {
    const [pin, more] = cluster.pins;
    const partner = joined.findIndex((other) => {
      const [facingPin, another] = other.pins;
      if (!pin || more || !facingPin || another || laneKey(other.lane) !== laneKey(cluster.lane))
        return false;
      if (pin.above === facingPin.above) return false;
      const [upper, lower] = pin.above ? [other, cluster] : [cluster, other];
      return upper.to <= lower.from && taken.rowsFree(cluster.lane.column, upper.to, lower.from);
    });
    const other = joined[partner];
    if (!other) joined.push(cluster);
    else
      joined[partner] = {
        lane: cluster.lane,
        pins: [...other.pins, ...cluster.pins],
        from: Math.min(other.from, cluster.from),
        to: Math.max(other.to, cluster.to),
      };
  }
  return joined;
}

/** How a cluster gets to a trunk in `channel`: already on it, along its line, or round by a riser. */
function way(cluster: Cluster, channel: number, taken: Occupied): 'on' | 'along' | 'round' {
  if (cluster.from <= channel && channel <= cluster.to) return 'on';
  const [pin, more] = cluster.pins;
  if (!pin || more) return 'round';
  const { lane } = cluster;
  if (pin.above && channel < cluster.from)
    return taken.rowsFree(lane.column, channel, cluster.from) &&
      taken.laneFree(lane, channel, cluster.from - 1)
      ? 'along'
      : 'round';
  if (!pin.above && channel > cluster.to)
    return taken.rowsFree(lane.column, cluster.to, channel) && taken.laneFree(lane, cluster.to + 1, channel)
      ? 'along'
      : 'round';
  return 'round';
}

function bestChannel(clusters: readonly Cluster[], wanted: number, taken: Occupied): number {
  const channels = new Set([wanted, ...clusters.flatMap(({ from, to }) => [from, to])]);
  let best = wanted;
  let least = Number.POSITIVE_INFINITY;
  for (const channel of channels) {
    const cost = clusters.reduce(
      (sum, cluster) =>
        sum + (way(cluster, channel, taken) === 'round' ? 10 + Math.abs(cluster.from - channel) : 0),
      channel === wanted ? 0 : 1,
    );
    if (cost < least) {
      least = cost;
      best = channel;
    }
  }
  return best;
}

const isRail = (drawn: Survey, net: number): boolean =>
  drawn.poles.feeds.has(net) || drawn.poles.returns.has(net);

export function planSection(drawn: Survey, columns: readonly Run[], ends: Ends): Section {
  const loose = findLevels(drawn, columns, []);
  const links = findLinks(drawn, columns, loose);
  const levels = links.length > 0 ? findLevels(drawn, columns, links) : loose;
  const level = links.filter((link) => new Set(link.map((part) => levels.row[part])).size === 1);
  const standing = stand(drawn, columns, levels, level);
  const byPart = new Map(standing.map((place) => [place.part.index, place]));
  const taken = new Occupied(columns.length, levels.rows, standing);
  const byNet = clustersOf(drawn, columns, byPart, taken);
  for (const clusters of byNet.values())
    for (const { lane, from, to } of clusters) taken.take(lane, from, to);
  const risers: Riser[][] = columns.map(() => []);
  const trunks = [...byNet].map(([net, clusters]): Trunk => {
    const supply = isRail(drawn, net);
    const before = ends.before(net, columns);
    const after = ends.after(net, columns);
    const wanted = levels.channel[net] as number;
    const channel = supply ? wanted : bestChannel(clusters, wanted, taken);
    for (const cluster of clusters) {
      const how = way(cluster, channel, taken);
      if (how === 'along')
        taken.take(cluster.lane, Math.min(channel, cluster.from), Math.max(channel, cluster.to));
      if (how !== 'round') continue;
      cluster.exit = channel < cluster.from ? cluster.from : cluster.to;
      const { column } = cluster.lane;
      const shared = risers[column]?.find((riser) => riser.net === net);
      cluster.riser = shared ?? { column, net, trunk: channel };
      if (!shared) risers[column]?.push(cluster.riser);
    }
    const sideways = supply || clusters.length > 1 || before !== '' || after !== '';
    return { net, channel, clusters, before, after, supply, sideways };
  });
  const marked = trunks.map((trunk) => clearOfLines(trunk, taken));
  return { columns, rows: levels.rows, standing, trunks: phasesTogether(drawn, marked), risers };
}

const byPlace = (a: Lane, b: Lane): number => laneKey(a) - laneKey(b);

/** Where another line of the end's own column stands in the way of a mark, the mark goes to the other end, or past it. */
function clearOfLines(trunk: Trunk, taken: Occupied): Trunk {
  if (!trunk.before && !trunk.after) return trunk;
  const { channel } = trunk;
  const past = (cluster: Cluster | undefined, sign: 1 | -1): Lane | undefined => {
    if (!cluster || cluster.riser) return undefined;
    const lines = taken.linesIn(cluster.lane.column, channel).sort((a, b) => sign * byPlace(b, a));
    const [outermost] = lines;
    return outermost && laneKey(outermost) !== laneKey(cluster.lane) ? outermost : undefined;
  };
  const leftmost = past(leftEnd(trunk), -1);
  const rightmost = past(rightEnd(trunk), 1);
  if (!trunk.supply) {
    if (trunk.after && !trunk.before && rightmost && !leftmost)
      return { ...trunk, before: trunk.after, after: '' };
    if (trunk.before && !trunk.after && leftmost && !rightmost)
      return { ...trunk, before: '', after: trunk.before };
  }
  return {
    ...trunk,
    ...(trunk.before && leftmost ? { leftmost } : {}),
    ...(trunk.after && rightmost ? { rightmost } : {}),
  };
}

/** Lines come in this order from left to right; a riser stands right of its column. */
const placeOf = ({ lane, riser }: Cluster): number =>
  lane.column * 1000 + (riser ? 500 : lane.shift + lane.phase * 20);

const extreme = ({ clusters }: Trunk, sign: number): Cluster | undefined =>
  clusters.reduce<Cluster | undefined>(
    (best, cluster) => (!best || sign * (placeOf(cluster) - placeOf(best)) > 0 ? cluster : best),
    undefined,
  );

/** The cluster that a conductor's trunk begins, and ends, at. */
export const leftEnd = (trunk: Trunk): Cluster | undefined => extreme(trunk, -1);
export const rightEnd = (trunk: Trunk): Cluster | undefined => extreme(trunk, 1);

/** The phases of one supply begin at its leftmost column, L1 above L2 above L3. */
function phasesTogether(drawn: Survey, trunks: readonly Trunk[]): Trunk[] {
  const phases = drawn.circuit.supplies
    .filter(({ current }) => current === '3AC')
    .flatMap(({ name }) =>
      ['L1', 'L2', 'L3'].map((pole, index) => ({ name, rail: `${name}:${pole}`, index })),
    );
  if (phases.length === 0) return [...trunks];
  const phaseOf = (net: number) => phases.find(({ rail }) => drawn.wiring.nets[net]?.rails.includes(rail));
  const leads = new Map<string, Lane>();
  for (const { net, clusters } of trunks) {
    const phase = phaseOf(net);
    for (const { lane, riser } of phase ? clusters : []) {
      const lead = leads.get(phase?.name ?? '');
      if (!riser && (!lead || laneKey(lane) < laneKey(lead))) leads.set(phase?.name ?? '', lane);
    }
  }
  return trunks.map((trunk) => {
    const phase = phaseOf(trunk.net);
    const lead = phase && leads.get(phase.name);
    return lead ? { ...trunk, lead, phase: phase.index } : trunk;
  });
}
