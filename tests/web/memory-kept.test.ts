import { expect, it } from 'vitest';
import { replay } from '../../src/memory/index.ts';
import { lineOf } from '../../src/practice/line.ts';
import { MemoryKept } from '../../src/web/engine/memory-kept.ts';
import { answerWith, MORNING } from '../support/answers.ts';

const line = (id: string, number: number | null, share: 0 | 1 = 1, minute = 0) => ({
  ...lineOf(answerWith({ id, at: MORNING + minute * 60_000, share })),
  circuit: `c-${id}`,
  number,
});

it('knows the circuits answered before, until the history is another one', () => {
  const memory = new MemoryKept();
  expect(memory.seen).toEqual(new Set());
  expect(memory.add([line('a', 1), line('b', null)])).toBe(2);
  expect(memory.seen).toEqual(new Set(['c-a', 'c-b']));
  expect(memory.add([line('a', 1), line('c', 3)])).toBe(3);
  expect(memory.seen).toEqual(new Set(['c-a', 'c-b', 'c-c']));
  memory.forget();
  expect([memory.seen, memory.recalls]).toEqual([new Set(), new Map()]);
});

it('reckons answers of one moment in the order of arrival, and those that have not arrived last', () => {
  const [right, wrong, late] = [line('right', 2), line('wrong', 1, 0), line('late', null, 0)];
  const memory = new MemoryKept();
  memory.add([late, right, wrong]);
  expect(memory.recalls).toEqual(replay([wrong, right, late]));
  expect(memory.recalls).not.toEqual(replay([right, wrong, late]));
});

it('goes on from how the learner stands with what came after that, until the answers themselves are here', () => {
  const before = [line('one', 1, 1, 1), line('two', 2, 0, 2)];
  const after = [line('three', 3, 1, 3), line('four', null, 1, 4)];
  const states = replay(before);
  const memory = new MemoryKept();
  memory.add([], { last: 2, recalls: Object.fromEntries(states) });
  expect(memory.recalls).toEqual(states);
  memory.add([...before, ...after]);
  expect(memory.recalls).toEqual(replay([...before, ...after]));
  memory.add([], null);
  expect(memory.recalls).toEqual(replay([...before, ...after]));
});
