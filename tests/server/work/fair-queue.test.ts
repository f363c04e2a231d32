import { describe, expect, it } from 'vitest';
import { FairQueue } from '../../../src/server/work/fair-queue.ts';

const all = <T>(queue: FairQueue<T>): T[] => {
  const taken: T[] = [];
  for (let thing = queue.next(); thing !== undefined; thing = queue.next()) taken.push(thing);
  return taken;
};

describe('what waits', () => {
  it('is taken in turns between owners, and of each in order', () => {
    const queue = new FairQueue<string>();
    for (const thing of ['a1', 'a2', 'a3', 'a4', 'b1', 'c1', 'b2']) queue.add(thing[0]!, thing);
    expect(queue.size).toBe(7);
    expect(queue.waitingOf('a')).toBe(4);
    expect(all(queue)).toEqual(['a1', 'b1', 'c1', 'a2', 'b2', 'a3', 'a4']);
    expect(queue.size).toBe(0);
    expect(queue.waitingOf('a')).toBe(0);
  });

  it('of somebody who comes later waits for one of each at most', () => {
    const queue = new FairQueue<string>();
    for (let at = 0; at < 1000; at++) queue.add('many', `m${at}`);
    expect(queue.next()).toBe('m0');
    queue.add('late', 'l0');
    expect([queue.next(), queue.next(), queue.next()]).toEqual(['m1', 'l0', 'm2']);
  });

  it('can be taken out before its turn', () => {
    const queue = new FairQueue<string>();
    for (const thing of ['a1', 'a2', 'b1']) queue.add(thing[0]!, thing);
    expect(queue.drop('a', 'a1')).toBe(true);
    expect(queue.drop('a', 'a1')).toBe(false);
    expect(queue.drop('b', 'b1')).toBe(true);
    expect(queue.size).toBe(1);
    expect(queue.clear()).toEqual(['a2']);
    expect(queue.next()).toBeUndefined();
  });
});
