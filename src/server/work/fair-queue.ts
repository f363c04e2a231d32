/**
 * What waits, taken in turns: first the longest waiting thing of the owner whose turn it is, then one of the next owner. However
 * much one of them asks for, another one's first thing waits for at most one thing of each.
 */
export class FairQueue<T> {
  /** Owners in the order of their turns, each with what it waits for. */
  private readonly owners = new Map<string, T[]>();
  private count = 0;

  get size(): number {
    return this.count;
  }

  waitingOf(owner: string): number {
    return this.owners.get(owner)?.length ?? 0;
  }

  add(owner: string, thing: T): void {
    this.count++;
    const own = this.owners.get(owner);
    if (own) own.push(thing);
    else this.owners.set(owner, [thing]);
  }

  next(): T | undefined {
    for (const [owner, things] of this.owners) {
      const thing = things.shift()!;
      this.count--;
      // To the end of the line, behind everybody else.
      this.owners.delete(owner);
      if (things.length > 0) this.owners.set(owner, things);
      return thing;
    }
    return undefined;
  }

  /** Takes out what nobody wants any more; false where it isn't there. */
  drop(owner: string, thing: T): boolean {
    const own = this.owners.get(owner);
    const at = own?.indexOf(thing) ?? -1;
    if (!own || at < 0) return false;
    own.splice(at, 1);
    this.count--;
    if (own.length === 0) this.owners.delete(owner);
    return true;
  }

  /** Takes out everything. */
  clear(): T[] {
    const all = [...this.owners.values()].flat();
    this.owners.clear();
    this.count = 0;
    return all;
  }
}
