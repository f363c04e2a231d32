/** A binary heap of numbered items by cost; an item may be put in again with a lower cost. */
export class Heap {
  private readonly items: number[] = [];
  private readonly costs: number[] = [];

  push(item: number, cost: number): void {
    const { items, costs } = this;
    let at = items.length;
    items.push(item);
    costs.push(cost);
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (costs[up]! <= cost) break;
      items[at] = items[up]!;
      costs[at] = costs[up]!;
      at = up;
    }
    items[at] = item;
    costs[at] = cost;
  }

  /** The cheapest item and its cost; undefined when nothing is left. */
  pop(): { item: number; cost: number } | undefined {
    const { items, costs } = this;
    if (items.length === 0) return undefined;
    const top = { item: items[0]!, cost: costs[0]! };
    const item = items.pop()!;
    const cost = costs.pop()!;
    const size = items.length;
    if (size === 0) return top;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= size) break;
      if (down + 1 < size && costs[down + 1]! < costs[down]!) down++;
      if (costs[down]! >= cost) break;
      items[at] = items[down]!;
      costs[at] = costs[down]!;
      at = down;
    }
    items[at] = item;
    costs[at] = cost;
    return top;
  }
}
