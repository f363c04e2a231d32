/**
 * A piece of work that has nothing to do with the project and never changes: how fast the machine is just now, and how steadily.
 * It does what the project's code mostly does: walks over lists of numbers, small objects, maps by text, floating point.
 */
import { median } from './row.ts';

const SIZE = 4096;

/** Returns what came of it, so that nothing of it can be left out. */
function work(): number {
  const next = new Int32Array(SIZE);
  for (let at = 0, state = 1; at < SIZE; at++) {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    next[at] = state % SIZE;
  }
  let found = 0;
  let sum = 0;
  const names = new Map<string, { count: number; at: number }>();
  for (let round = 0; round < 40; round++) {
    let place = round;
    for (let step = 0; step < SIZE; step++) {
      place = next[(place + step) % SIZE]!;
      found ^= place;
      sum += Math.exp(-place / SIZE) / (1 + step);
    }
    for (let step = 0; step < 200; step++) {
      const name = `-K${(found + step) % 97}`;
      const known = names.get(name);
      if (known) known.count++;
      else names.set(name, { count: 1, at: step });
    }
  }
  return found + sum + names.size;
}

/**
 * Milliseconds of one such piece on the machine that the bounds are meant for, where settling one press of twelve relays took 3 us at
 * commit ace11d8: on another, that took 4.23 us and a piece 2.38 ms, each several times in turn.
 */
const MEANT = 1.69;

export interface Speed {
  /** How many times slower than that machine. */
  readonly slower: number;
  /** How far apart equal pieces were, as a share: what is worse than a bound by no more than that says nothing. */
  readonly noise: number;
}

/** Takes the time of the piece again and again, between the benchmarks. */
export class Reference {
  private readonly times: number[] = [];
  private came = 0;

  take(): void {
    for (let warm = 0; warm < 20; warm++) this.came += work();
    for (let run = 0; run < 30; run++) {
      const from = performance.now();
      this.came += work();
      this.times.push(performance.now() - from);
    }
  }

  get speed(): Speed {
    if (!Number.isFinite(this.came)) throw new Error('The reference came to nothing.');
    const sorted = this.times.toSorted((one, other) => one - other);
    const at = (share: number): number => sorted[Math.floor((sorted.length - 1) * share)]!;
    return { slower: median(this.times) / MEANT, noise: (at(0.9) - at(0.1)) / at(0.5) };
  }
}
