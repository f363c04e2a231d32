/** Union-find over 0…n-1 (path halving, smaller index wins, so results don't depend on the order of unions). */
export class Joining {
  private readonly parent: Int32Array;

  constructor(size: number) {
    this.parent = new Int32Array(size);
    for (let item = 0; item < size; item++) this.parent[item] = item;
  }

  find(item: number): number {
    const { parent } = this;
    let at = item;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  }

  /** True when the two were apart before. */
  join(one: number, other: number): boolean {
    const a = this.find(one);
    const b = this.find(other);
    if (a === b) return false;
    this.parent[Math.max(a, b)] = Math.min(a, b);
    return true;
  }
}
