/** What hangs together, against looking from everywhere to everywhere. */
import { describe, expect, it } from 'vitest';
import { randomOf } from '../../src/generator/random.ts';
import { JoinedSets, Joining, rowOf, rowsOf, strongComponents, turned } from '../../src/graph/index.ts';

const upTo = (size: number): number[] => Array.from({ length: size }, (_, index) => index);

/** Of each vertex those that it leads to, itself among them, by going on until nothing is new. */
const reached = (lists: readonly (readonly number[])[]): Set<number>[] =>
  lists.map((_, from) => {
    const found = new Set([from]);
    for (const at of found) for (const next of lists[at]!) found.add(next);
    return found;
  });

const drawn = (seed: string, size: number, edges: number): number[][] => {
  const random = randomOf(seed);
  const lists = upTo(size).map((): number[] => []);
  for (let edge = 0; edge < edges; edge++) random.pick(lists).push(random.int(0, size - 1));
  return lists;
};

describe('joining', () => {
  it('holds together what was joined, under its smallest number, and says whether it was apart', () => {
    for (let index = 0; index < 100; index++) {
      const random = randomOf(`joining ${index}`);
      const joining = new Joining(12);
      const lists = upTo(12).map((): number[] => []);
      for (let pair = 0; pair < 9; pair++) {
        const [one, other] = [random.int(0, 11), random.int(0, 11)];
        expect(joining.join(one, other)).toBe(!reached(lists)[one]!.has(other));
        lists[one]!.push(other);
        lists[other]!.push(one);
      }
      const together = reached(lists);
      for (const item of upTo(12)) expect(joining.find(item)).toBe(Math.min(...together[item]!));
    }
  });
});

describe('joined sets', () => {
  it('hold what was added or joined, in that order, the first of two giving the root', () => {
    const sets = new JoinedSets<string>();
    sets.add('a');
    sets.join('b', 'c');
    sets.join('d', 'e');
    sets.join('c', 'd');
    sets.add('d');
    expect(sets.sets()).toEqual([['a'], ['b', 'c', 'd', 'e']]);
    expect(['a', 'b', 'c', 'd', 'e', 'f'].map((item) => sets.find(item))).toEqual([
      'a',
      'b',
      'b',
      'b',
      'b',
      'f',
    ]);
    expect(sets.together('e', 'c')).toBe(true);
    expect(sets.together('a', 'b')).toBe(false);
    // One that never came is in no set, not even with itself.
    expect(sets.together('f', 'f')).toBe(false);
    expect(sets.together('a', 'f')).toBe(false);
  });

  it('hold long chains together, whichever end they are joined at', () => {
    for (const turned of [false, true]) {
      const sets = new JoinedSets<number>();
      for (const item of upTo(1000)) {
        if (turned) sets.join(item + 1, item);
        else sets.join(item, item + 1);
      }
      expect(new Set(upTo(1001).map((item) => sets.find(item))).size).toBe(1);
      expect(sets.sets()).toHaveLength(1);
    }
  });
});

describe('rows', () => {
  it('are the lists that they are made of, and turned round those in which each number stands', () => {
    const lists = [[2, 0], [], [1, 2], [2]];
    const rows = rowsOf(lists);
    expect(upTo(4).map((row) => [...rowOf(rows, row)])).toEqual(lists);
    const back = turned(rows, 4);
    expect(upTo(4).map((item) => [...rowOf(back, item)])).toEqual([[0], [2], [0, 2, 3], []]);
  });
});

describe('strong components', () => {
  it('hold together what leads to one another, and are numbered from where everything leads to', () => {
    for (let index = 0; index < 300; index++) {
      const lists = drawn(`components ${index}`, 1 + (index % 9), index % 17);
      const component = strongComponents(rowsOf(lists));
      const leads = reached(lists);
      for (const one of lists.keys()) {
        for (const other of leads[one]!) {
          const mutual = leads[other]!.has(one);
          expect(component[one]! === component[other]!, `components ${index}`).toBe(mutual);
          if (!mutual) expect(component[other]!).toBeLessThan(component[one]!);
        }
        for (const other of lists.keys())
          if (!leads[one]!.has(other)) expect(component[one]).not.toBe(component[other]);
      }
      expect(new Set(component).size).toBe(Math.max(...component) + 1);
    }
  });

  it('of a chain as long as a hostile file may have it are found without recursion', () => {
    const size = 100_000;
    const component = strongComponents(rowsOf(upTo(size).map((at) => (at + 1 < size ? [at + 1] : []))));
    expect([component[0], component[size - 1]]).toEqual([size - 1, 0]);
  });
});
