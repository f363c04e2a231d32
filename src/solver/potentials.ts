/** Union-find in which each node knows its potential against its root, along each axis. */
import { type Axes, newVolts, type Volts } from './axes.ts';

const SAME = 1e-9;

export class Potentials {
  private readonly parent: Int32Array;
  readonly volts: Volts;

  constructor(axes: Axes, size: number) {
    this.parent = Int32Array.from({ length: size }, (_, index) => index);
    this.volts = newVolts(axes, size);
  }

  /** The root; afterwards `volts` of the node are its potential against it. */
  find(node: number): number {
    const { parent, volts } = this;
    const way: number[] = [];
    let root = node;
    while (parent[root] !== root) {
      way.push(root);
      root = parent[root]!;
    }
    for (const along of volts) {
      let sum = 0;
      for (let index = way.length - 1; index >= 0; index--) {
        sum += along[way[index]!]!;
        along[way[index]!] = sum;
      }
    }
    for (const at of way) parent[at] = root;
    return root;
  }

  /** Fixes potential(a) - potential(b), given along each axis; false when that contradicts what is known. */
  fix(a: number, b: number, difference: (axis: number) => number): boolean {
    const rootA = this.find(a);
    const rootB = this.find(b);
    const { volts } = this;
    let fits = true;
    for (let axis = 0; axis < volts.length; axis++) {
      const along = volts[axis]!;
      const missing = difference(axis) + along[b]! - along[a]!;
      if (rootA === rootB) fits &&= Math.abs(missing) < SAME;
      else along[rootA] = missing;
    }
    if (rootA !== rootB) this.parent[rootA] = rootB;
    return fits;
  }
}

/** Nodes that are joined have one potential. */
export const NO_VOLTS = (): number => 0;
