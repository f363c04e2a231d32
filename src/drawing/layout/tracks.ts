/** The horizontal conductors of one channel, put one under another so that few cross and none touch. */

export interface Horizontal {
  readonly net: number;
  /** What it takes of the channel, marks included. */
  readonly from: number;
  readonly to: number;
  /** Where conductors come down to it, and where they go down from it. */
  readonly up: readonly number[];
  readonly down: readonly number[];
  /** Those with a rank run in its order, from the top. */
  readonly rank?: number;
}

const inside = (list: readonly number[], { from, to }: Horizontal): number =>
  list.reduce((sum, x) => sum + (x > from && x < to ? 1 : 0), 0);

/** Crossings when `upper` runs above `lower`; out of their rank counts as many. */
const crossings = (upper: Horizontal, lower: Horizontal): number =>
  inside(upper.down, lower) +
  inside(lower.up, upper) +
  (upper.rank !== undefined && lower.rank !== undefined && upper.rank > lower.rank ? 1000 : 0);

/** By horizontal: its track, counted from the top; and how many tracks there are. `clear` is kept between neighbours. */
export function findTracks(
  list: readonly Horizontal[],
  clear: number,
): { readonly track: readonly number[]; readonly count: number } {
  const order: number[] = [];
  list.forEach((item, index) => {
    let best = order.length;
    let least = Number.POSITIVE_INFINITY;
    for (let place = order.length; place >= 0; place--) {
      let cost = 0;
      order.forEach((other, at) => {
        const rival = list[other] as Horizontal;
        cost += at < place ? crossings(rival, item) : crossings(item, rival);
      });
      if (cost < least) {
        least = cost;
        best = place;
      }
    }
    order.splice(best, 0, index);
  });
  const track = new Array<number>(list.length).fill(0);
  let count = 0;
  order.forEach((index, at) => {
    const item = list[index] as Horizontal;
    let free = 0;
    for (let earlier = 0; earlier < at; earlier++) {
      const other = order[earlier] as number;
      const rival = list[other] as Horizontal;
      if (rival.from - clear < item.to && item.from - clear < rival.to)
        free = Math.max(free, (track[other] as number) + 1);
    }
    track[index] = free;
    count = Math.max(count, free + 1);
  });
  return { track, count };
}
