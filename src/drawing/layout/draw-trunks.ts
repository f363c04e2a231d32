/** The conductors of a row of columns: verticals on their lines, trunks, risers, joints and marks. */
import type { Collected } from './collected.ts';
import type { Profile } from './profile.ts';
import type { Cluster, Riser, Trunk } from './section-types.ts';
import type { Across } from './sideways.ts';
import { leftEnd, rightEnd } from './trunk-ends.ts';

export interface TrunkDrafting {
  readonly profile: Profile;
  readonly across: Across;
  readonly portY: ReadonlyMap<number, number>;
  /** The height of each trunk, and of each cluster's way out to its riser. */
  readonly yOf: ReadonlyMap<Trunk | Cluster, number>;
  /** What a conductor is called, by net. */
  readonly namesOf: (net: number) => readonly string[];
}

const UP = 1;
const DOWN = 2;
const LEFT = 4;
const RIGHT = 8;
/** Numbers of set bits: how many ways meet. */
const ways = (sides: number): number =>
  (sides & 1) + ((sides >> 1) & 1) + ((sides >> 2) & 1) + ((sides >> 3) & 1);

/** The vertical of a cluster, as far as its ports and the horizontal it meets. */
function drawLine(
  net: number,
  cluster: Cluster,
  meets: number | undefined,
  on: TrunkDrafting,
  out: Collected,
): void {
  const x = on.across.columns.laneX(cluster.lane);
  let top = meets ?? Number.POSITIVE_INFINITY;
  let bottom = meets ?? Number.NEGATIVE_INFINITY;
  for (const { port } of cluster.pins) {
    const y = on.portY.get(port) as number;
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  out.wire(net, x, top, x, bottom);
}

/** From the trunk to the furthest of its exits on either side; says on which sides of the trunk it stands. */
function drawRiser(riser: Riser, exits: readonly number[], y: number, x: number, out: Collected): number {
  const [top, bottom] = [Math.min(y, ...exits), Math.max(y, ...exits)];
  out.wire(riser.net, x, top, x, bottom);
  for (const exit of exits) if (exit > top && exit < bottom) out.dot(riser.net, x, exit);
  return (top < y ? UP : 0) | (bottom > y ? DOWN : 0);
}

export function drawTrunk(trunk: Trunk, on: TrunkDrafting, out: Collected): void {
  const { net } = trunk;
  if (!trunk.sideways) {
    for (const cluster of trunk.clusters) drawLine(net, cluster, undefined, on, out);
    return;
  }
  const { across, profile } = on;
  const y = on.yOf.get(trunk) as number;
  const met = new Map<number, number>();
  const meet = (x: number, sides: number): void => {
    met.set(x, (met.get(x) ?? 0) | sides);
  };
  const risers = new Map<Riser, number[]>();
  for (const cluster of trunk.clusters) {
    const { riser, lane, pins } = cluster;
    const line = across.columns.laneX(lane);
    if (!riser) {
      drawLine(net, cluster, y, on, out);
      for (const pin of pins) meet(line, pin.above ? DOWN : UP);
      continue;
    }
    const exit = on.yOf.get(cluster) as number;
    drawLine(net, cluster, exit, on, out);
    out.wire(net, line, exit, across.riserX(riser), exit);
    if (pins.length > 1) out.dot(net, line, exit);
    risers.set(riser, [...(risers.get(riser) ?? []), exit]);
  }
  for (const [riser, exits] of risers) {
    const x = across.riserX(riser);
    meet(x, drawRiser(riser, exits, y, x, out));
  }
  const xs = [...met.keys(), ...across.reaches(trunk)];
  const left = Math.min(...xs) - (trunk.before ? profile.stub : 0);
  const right = Math.max(...xs) + (trunk.after ? profile.stub : 0);
  out.wire(net, left, y, right, y);
  for (const [x, sides] of met)
    if (ways(sides | (x > left ? LEFT : 0) | (x < right ? RIGHT : 0)) > 2) out.dot(net, x, y);
  if (trunk.before && leftEnd(trunk)) drawMark(trunk, 'left', left, y, on, out);
  if (trunk.after && rightEnd(trunk)) drawMark(trunk, 'right', right, y, on, out);
}

function drawMark(
  trunk: Trunk,
  side: 'left' | 'right',
  x: number,
  y: number,
  { profile, namesOf }: TrunkDrafting,
  out: Collected,
): void {
  const role = trunk.supply ? 'rail' : 'mark';
  const names = namesOf(trunk.net);
  const of = names[0] ?? '';
  out.marks.push({
    id: `${of}@${side}`,
    net: trunk.net,
    kind: trunk.supply ? 'supply' : 'goes-on',
    names,
    side,
    x,
    y,
  });
  const top = profile.cell ? y : y - profile.lineHeight(role) / 2;
  if (side === 'left') out.text(role, trunk.before, x - profile.markGap + profile.cell, top, 'end', of);
  else out.text(role, trunk.after, x + profile.markGap, top, 'start', of);
}
