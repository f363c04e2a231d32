/** The horizontals of a row of columns: trunks, and the ways out to risers; and in which order they run in each channel. */
import type { Columns } from './extents.ts';
import type { Profile } from './profile.ts';
import type { Cluster, Riser, Section, Trunk } from './section-types.ts';
import { findTracks, type Horizontal } from './tracks.ts';

/** Places across the row. */
export class Across {
  readonly columns: Columns;
  private readonly section: Section;
  private readonly profile: Profile;

  constructor(section: Section, columns: Columns, profile: Profile) {
    this.section = section;
    this.columns = columns;
    this.profile = profile;
  }

  riserX(riser: Riser): number {
    const list = this.section.risers[riser.column] ?? [];
    return this.columns.riserX[riser.column]?.[list.indexOf(riser)] ?? 0;
  }

  /** Lines that a trunk runs to without meeting them. */
  reaches({ lead, leftmost, rightmost }: Trunk): number[] {
    return [lead, leftmost, rightmost].flatMap((lane) => (lane ? [this.columns.laneX(lane)] : []));
  }

  /** What a trunk takes beyond its outermost line for the mark there. */
  private markWidth(text: string, supply: boolean): number {
    const { profile } = this;
    return text ? profile.stub + profile.measure(text, supply ? 'rail' : 'mark') + profile.markGap : 0;
  }

  room({ before, after, supply }: Trunk): readonly [left: number, right: number] {
    return [this.markWidth(before, supply), this.markWidth(after, supply)];
  }
}

/** A horizontal with its channel: a trunk's own, or a cluster's way out to its riser. */
export interface Sideways extends Horizontal {
  readonly channel: number;
  readonly of: Trunk | Cluster;
}

/** From a cluster's line to its riser. */
function wayOut(trunk: Trunk, cluster: Cluster, exit: number, line: number, x: number): Sideways {
  const fromAbove = exit < trunk.channel;
  const at = (above: boolean): number[] => cluster.pins.filter((pin) => pin.above === above).map(() => line);
  return {
    channel: exit,
    net: trunk.net,
    of: cluster,
    from: Math.min(line, x),
    to: Math.max(line, x),
    up: [...at(false), ...(fromAbove ? [] : [x])],
    down: [...at(true), ...(fromAbove ? [x] : [])],
  };
}

export function findSideways({ trunks }: Section, across: Across): Sideways[] {
  const found: Sideways[] = [];
  for (const trunk of trunks) {
    if (!trunk.sideways) continue;
    const up: number[] = [];
    const down: number[] = [];
    const xs = across.reaches(trunk);
    for (const cluster of trunk.clusters) {
      const { exit, riser } = cluster;
      const line = across.columns.laneX(cluster.lane);
      if (exit === undefined || !riser) {
        xs.push(line);
        for (const pin of cluster.pins) (pin.above ? down : up).push(line);
        continue;
      }
      const x = across.riserX(riser);
      xs.push(x);
      (exit < trunk.channel ? up : down).push(x);
      found.push(wayOut(trunk, cluster, exit, line, x));
    }
    const [left, right] = across.room(trunk);
    found.push({
      channel: trunk.channel,
      net: trunk.net,
      of: trunk,
      from: Math.min(...xs) - left,
      to: Math.max(...xs) + right,
      up,
      down,
      ...(trunk.phase === undefined ? {} : { rank: trunk.phase }),
    });
  }
  return found;
}

export interface Channel {
  readonly items: readonly Sideways[];
  /** By item. */
  readonly track: readonly number[];
  readonly count: number;
}

/** By channel: what runs in it, on which tracks. */
export function fillChannels(rows: number, sideways: readonly Sideways[], clear: number): Channel[] {
  const items: Sideways[][] = Array.from({ length: rows + 1 }, () => []);
  for (const item of sideways) items[item.channel]?.push(item);
  return items.map((list) => ({ items: list, ...findTracks(list, clear) }));
}
