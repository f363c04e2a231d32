/** Random contact networks between two terminals, and the contacts that they use up. */
import type { Device } from '../../shared/circuit.ts';
import type { Random } from '../../src/generator/random.ts';

/** A network as a tree; a leaf is one contact of a mechanism. */
export type ContactTree =
  | { readonly kind: 'contact'; readonly device: string; readonly form: 'make' | 'break' }
  | { readonly kind: 'series' | 'parallel'; readonly parts: readonly ContactTree[] };

/** A random tree with about `leaves` contacts of the given devices. */
export function randomTree(random: Random, devices: readonly string[], leaves: number): ContactTree {
  if (leaves <= 1) {
    return { kind: 'contact', device: random.pick(devices), form: random.chance(0.6) ? 'make' : 'break' };
  }
  const first = random.int(1, leaves - 1);
  return {
    kind: random.chance(0.5) ? 'series' : 'parallel',
    parts: [randomTree(random, devices, first), randomTree(random, devices, leaves - first)],
  };
}

interface Pole {
  readonly device: string;
  readonly common: string;
  readonly make: string;
  readonly break: string;
  /** What the common is joined to, once the pole is used. */
  at?: string;
  readonly used: Set<'make' | 'break'>;
}

/** Wires trees into paths, out of a stock of changeover poles, with junctions between the parts. */
export class Wirer {
  readonly paths: string[] = [];
  private readonly poles: Pole[] = [];
  private junctions = 0;
  private readonly random: Random;

  constructor(random: Random) {
    this.random = random;
  }

  /** Puts changeover poles into stock: `-K1:11-12-14` and so on. */
  stock(device: string, poles: readonly (readonly [common: string, rest: string, moved: string])[]): void {
    for (const [common, rest, moved] of poles)
      this.poles.push({ device, common, break: rest, make: moved, used: new Set() });
  }

  /** Devices that still have a free leg. */
  free(): string[] {
    return [...new Set(this.poles.filter(({ used }) => used.size === 0).map(({ device }) => device))];
  }

  junction(): string {
    return this.named(this.junctions++);
  }

  private named(number: number): string {
    return `-X${1 + Math.floor(number / 60)}:${1 + (number % 60)}`;
  }

  /** The junctions that are made while `work` is done. */
  during(work: () => void): string[] {
    const before = this.junctions;
    work();
    return Array.from({ length: this.junctions - before }, (_, index) => this.named(before + index));
  }

  /** The terminal rows that the junctions are on. */
  boards(): Device[] {
    return Array.from({ length: Math.ceil(this.junctions / 60) }, (_, index) => ({
      kind: 'terminals' as const,
      name: `-X${index + 1}`,
      count: 60,
    }));
  }

  private contact(device: string, form: 'make' | 'break', from: string, to: string): void {
    const mine = this.poles.filter((pole) => pole.device === device && !pole.used.has(form));
    // The other leg of a changeover whose common is there already, or a fresh pole, either way round.
    const shared = mine.find(({ at }) => at === from) ?? mine.find(({ at }) => at === to);
    const pole = shared ?? mine.find(({ at }) => at === undefined);
    if (!pole) throw new RangeError(`no ${form} contact of ${device} left`);
    const backwards = shared ? pole.at === to && pole.at !== from : this.random.chance(0.3);
    pole.at = backwards ? to : from;
    pole.used.add(form);
    const leg = pole[form];
    this.paths.push(
      backwards
        ? `${from} ${device}:${leg}-${pole.common} ${to}`
        : `${from} ${device}:${pole.common}-${leg} ${to}`,
    );
  }

  wire(tree: ContactTree, from: string, to: string): void {
    switch (tree.kind) {
      case 'contact':
        this.contact(tree.device, tree.form, from, to);
        return;
      case 'parallel':
        for (const part of tree.parts) this.wire(part, from, to);
        return;
      case 'series': {
        let at = from;
        tree.parts.forEach((part, index) => {
          const next = index === tree.parts.length - 1 ? to : this.junction();
          this.wire(part, at, next);
          at = next;
        });
        return;
      }
    }
  }
}

/** The terminals of relay poles 1 to `count`. */
export const relayPoles = (count: number): [string, string, string][] =>
  Array.from({ length: count }, (_, index) => {
    const pole = index + 1;
    return [`${pole}1`, `${pole}2`, `${pole}4`];
  });

/** A hand-operated device with `count` changeover contacts. */
export const manyPoled = (
  name: string,
  count: number,
  kind: 'push-button' | 'field-contact' = 'push-button',
): Device => ({
  kind,
  name,
  contacts: relayPoles(count).map((terminals) => ({ form: 'changeover' as const, terminals })),
});
