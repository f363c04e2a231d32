/**
 * One row of columns before it has coordinates: which line each port stands on, in which channel each conductor
 * runs, and which ports reach it straight down or up their line and which by a riser at the column's right.
 */
import type { Run, Survey } from '../parts/index.ts';
import { clustersOf } from './clusters.ts';
import { findLevels, type Levels } from './levels.ts';
import { findLinks } from './links.ts';
import { Occupied } from './occupied.ts';
import { placeParts } from './place-parts.ts';
import {
  type Cluster,
  type Ends,
  type PlacedPart,
  type Riser,
  type Section,
  spreadsOver,
  type Trunk,
} from './section-types.ts';
import { clearOfLines, phasesTogether } from './trunk-ends.ts';

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
  if (clusters.every((cluster) => way(cluster, wanted, taken) !== 'round')) return wanted;
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

/** Levels with linked poles in one row, and the links that came out level. */
function placeRows(
  drawn: Survey,
  columns: readonly Run[],
  known?: Levels,
  narrow: ReadonlySet<number> = new Set(),
) {
  const loose = known ?? findLevels(drawn, columns, []);
  const links = findLinks(drawn, columns, loose);
  const levels = links.length > 0 ? findLevels(drawn, columns, links) : loose;
  const level = links.filter((link) => new Set(link.map((part) => levels.row[part])).size === 1);
  return { levels, standing: placeParts(drawn, columns, levels, level, narrow) };
}

/** Only where parts stand, to measure how wide the columns will be. */
export function outline(drawn: Survey, columns: readonly Run[], levels: Levels): Section {
  const { standing } = placeRows(drawn, columns, levels);
  return { columns, rows: levels.rows, standing, trunks: [], risers: columns.map(() => []) };
}

/** Motors that spread over columns between which something is led round through them. */
function crossedMotors(standing: readonly PlacedPart[], trunks: readonly Trunk[]): number[] {
  const motors = standing.filter(spreadsOver);
  if (motors.length === 0) return [];
  const spans = trunks.flatMap(({ channel, clusters }) =>
    clusters.flatMap(({ riser, exit = channel }) =>
      riser ? [{ column: riser.column, from: Math.min(channel, exit), to: Math.max(channel, exit) }] : [],
    ),
  );
  return motors
    .filter(({ column, row }) =>
      spans.some(
        (span) => column <= span.column && span.column < column + 2 && span.from <= row && row < span.to,
      ),
    )
    .map(({ part }) => part.index);
}

/**
 * `known`: the levels of exactly these columns without links, where they have been found before. `narrow`: motors that
 * must not spread over several columns.
 */
export function planSection(
  drawn: Survey,
  columns: readonly Run[],
  ends: Ends,
  known?: Levels,
  narrow: ReadonlySet<number> = new Set(),
): Section {
  const { levels, standing } = placeRows(drawn, columns, known, narrow);
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
  const crossed = crossedMotors(standing, trunks);
  if (crossed.length > 0) return planSection(drawn, columns, ends, known, new Set([...narrow, ...crossed]));
  const marked = trunks.map((trunk) => clearOfLines(trunk, taken));
  return { columns, rows: levels.rows, standing, trunks: phasesTogether(drawn, marked, taken), risers };
}
