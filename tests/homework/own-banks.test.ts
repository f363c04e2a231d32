import { describe, expect, it } from 'vitest';
import { papersFor, placeFor } from '../../src/homework/index.ts';
import { courseOf } from '../../src/practice/index.ts';
import { ownBank } from '../support/own-bank.ts';
import { seats, setOf } from './course.ts';

const course = (() => {
  const made = courseOf(ownBank());
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
})();

const ways = [...course.skills].flatMap(([skill, { recipes }]) =>
  recipes.flatMap(({ kinds }) => kinds).map((kind, turn) => [skill, kind, turn] as const),
);

describe('the banks that come with the program', () => {
  it.each(ways)('give homework on %s as %s', (skill, kind, turn) => {
    const place = placeFor(course, { skill, level: 'small', marks: 1, turn }, 'sample');
    if (!place.ok) throw new Error(JSON.stringify(place.problems));
    expect(place.value).toMatchObject({ skill, kind });
    const papers = papersFor(setOf([place.value]), seats(6));
    expect(papers.ok && new Set(papers.value.map(({ items }) => items[0]!.circuit)).size).toBe(6);
  });
});
