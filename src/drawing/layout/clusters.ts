/** The ports of each conductor, gathered where they stand on one line with nothing between them. */
import type { Run, Survey } from '../parts/index.ts';
import { isAbove } from '../parts/survey.ts';
import type { Occupied } from './occupied.ts';
import { type Cluster, type Lane, laneKey, type Pin, type PlacedPart } from './section-types.ts';

export function clustersOf(
  drawn: Survey,
  columns: readonly Run[],
  standing: ReadonlyMap<number, PlacedPart>,
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
    const place = standing.get(wiring.partOfPort[port] as number) as PlacedPart;
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
