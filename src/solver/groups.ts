/** Union-find over any whole numbers, negative ones too; a number that was never joined stands alone. */
export class Groups {
  private readonly up = new Map<number, number>();

  find(item: number): number {
    let root = item;
    for (let next = this.up.get(root); next !== undefined; next = this.up.get(root)) root = next;
    for (let at = item; at !== root; ) {
      const next = this.up.get(at)!;
      this.up.set(at, root);
      at = next;
    }
    return root;
  }

  join(one: number, other: number): void {
    const [a, b] = [this.find(one), this.find(other)];
    if (a !== b) this.up.set(a, b);
  }
}
