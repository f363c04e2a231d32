/** Sets of terminals that grow together (union-find). */
export class TerminalSets<T extends string = string> {
  private readonly parent = new Map<T, T>();

  add(terminal: T): void {
    if (!this.parent.has(terminal)) this.parent.set(terminal, terminal);
  }

  /** Adds what isn't there yet. The first of two sets gives the joined one its root. */
  join(one: T, other: T): void {
    this.add(one);
    this.add(other);
    this.parent.set(this.root(other), this.root(one));
  }

  together(one: T, other: T): boolean {
    return this.parent.has(one) && this.parent.has(other) && this.root(one) === this.root(other);
  }

  /** The sets, each in the order its terminals were added. */
  sets(): T[][] {
    const sets = new Map<T, T[]>();
    for (const terminal of this.parent.keys()) {
      const top = this.root(terminal);
      const set = sets.get(top);
      if (set) set.push(terminal);
      else sets.set(top, [terminal]);
    }
    return [...sets.values()];
  }

  private root(terminal: T): T {
    let at = terminal;
    for (let up = this.parent.get(at)!; up !== at; up = this.parent.get(at)!) {
      // Halving the way keeps long daisy chains from making this slow.
      this.parent.set(at, this.parent.get(up)!);
      at = this.parent.get(at)!;
    }
    return at;
  }
}
