/** Sets of anything that grow together (union-find over values). One that was never added or joined stands alone. */
export class JoinedSets<T> {
  private readonly up = new Map<T, T>();

  /** Has it among the sets, alone unless it was joined. */
  add(item: T): void {
    if (!this.up.has(item)) this.up.set(item, item);
  }

  /** Adds what isn't there yet. The first of two sets gives the joined one its root. */
  join(one: T, other: T): void {
    this.add(one);
    this.add(other);
    this.up.set(this.find(other), this.find(one));
  }

  /** The root of its set; itself where it isn't there. */
  find(item: T): T {
    let at = item;
    for (let next = this.up.get(at) ?? at; next !== at; next = this.up.get(at)!) {
      // Halving the way keeps long chains from making this slow.
      const beyond = this.up.get(next)!;
      this.up.set(at, beyond);
      at = beyond;
    }
    return at;
  }

  together(one: T, other: T): boolean {
    return this.up.has(one) && this.up.has(other) && this.find(one) === this.find(other);
  }

  /** The sets, each in the order its members were added. */
  sets(): T[][] {
    const sets = new Map<T, T[]>();
    for (const item of this.up.keys()) {
      const root = this.find(item);
      const set = sets.get(root);
      if (set) set.push(item);
      else sets.set(root, [item]);
    }
    return [...sets.values()];
  }
}
