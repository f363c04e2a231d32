import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { homeworkSet } from '../../shared/homework.ts';
import * as homework from '../../src/homework/index.ts';
import {
  checkSet,
  HOMEWORK_CODES,
  INTERCHANGE_CODES,
  mayReview,
  phaseOf,
  placeFor,
  placesFor,
} from '../../src/homework/index.ts';
import { refusedWith } from '../support/in-english.ts';
import { CLOSES, course, OPENS, places, setOf } from './course.ts';

const set = setOf(places(['make-contact'], 2));

describe('a homework set', () => {
  it('is read by its schema and found sound', () => {
    expect(homeworkSet.parse(set)).toEqual(set);
    expect(checkSet(set, course)).toEqual({ ok: true, value: set });
  });

  it('is refused with everything that is wrong with it, all at once', () => {
    const [place] = set.places;
    const bad = setOf(
      [
        { ...place!, skill: 'knitting' },
        { ...place!, families: ['make-only', 'spaghetti'] },
      ],
      { closesAt: OPENS },
    );
    const checked = checkSet(bad, course);
    expect(!checked.ok && checked.problems.map(({ code }) => code)).toEqual([
      'homework-times',
      'homework-unknown-skill',
      'homework-unknown-family',
    ]);
  });

  it('opens at its first moment and is closed at its closing time', () => {
    expect([OPENS - 1, OPENS, CLOSES - 1, CLOSES].map((at) => phaseOf(set, at))).toEqual([
      'before',
      'open',
      'open',
      'closed',
    ]);
  });

  it('lets nobody look through a paper before the set says so', () => {
    const may = (review: typeof set.review, at: number, submitted: boolean): boolean =>
      mayReview({ ...set, review }, at, submitted);
    expect(may('after-closing', CLOSES - 1, true)).toBe(false);
    expect(may('after-closing', CLOSES, true)).toBe(true);
    expect(may('after-submitting', OPENS + 1, false)).toBe(false);
    expect(may('after-submitting', OPENS + 1, true)).toBe(true);
    expect(may('never', CLOSES + 1, true)).toBe(false);
  });
});

describe('places', () => {
  it('take turns among the skills, and among the ways in which each is asked', () => {
    const made = placesFor(course, {
      skills: ['make-contact', 'relay-chains'],
      items: 6,
      level: 'small',
      marksEach: 1,
      seed: 's',
    });
    if (!made.ok) throw new Error('refused');
    expect(made.value.map(({ skill, kind }) => `${skill} ${kind}`)).toEqual([
      'make-contact lamp-states',
      'relay-chains lamp-states',
      'make-contact sequence',
      'relay-chains sequence',
      'make-contact lamp-states',
      'relay-chains lamp-states',
    ]);
  });

  it('are larger and harder at a higher level', () => {
    const at = (level: 'small' | 'middle' | 'large') => {
      const made = placeFor(course, { skill: 'relay-chains', level, marks: 1 }, 's');
      if (!made.ok) throw new Error('refused');
      return made.value;
    };
    expect([at('small').size, at('middle').size, at('large').size]).toEqual([2, 4, 5]);
    expect(at('middle').difficulty).toBeGreaterThan(at('small').difficulty);
    expect(at('large').difficulty).toBeGreaterThan(at('middle').difficulty);
  });

  it('are refused for a skill that there is not, and for a kind in which it is not asked', () => {
    const refused = (wish: Parameters<typeof placeFor>[1]) => refusedWith(placeFor(course, wish, 's'));
    expect(refused({ skill: 'knitting', level: 'small', marks: 1 })).toMatchObject([
      { code: 'homework-unknown-skill' },
    ]);
    expect(refused({ skill: 'seal-in', level: 'small', marks: 1, kind: 'meter' })).toMatchObject([
      { code: 'homework-no-recipe', hint: expect.stringContaining('lamp-states') },
    ]);
  });
});

describe('docs/errors.md', () => {
  const page = readFileSync(new URL('../../docs/errors.md', import.meta.url), 'utf8');
  const told = (from: string) =>
    [...page.matchAll(/^\| `([a-z-]+)` \| ([a-z ]+) \| (.*) \|$/gm)].flatMap(([, code, where, meaning]) =>
      where === from && /^[A-Z].*\.$/.test(meaning!) ? [code] : [],
    );

  it('has the codes of homework and of interchange, and no others', () => {
    expect(told('homework')).toEqual(HOMEWORK_CODES);
    expect(told('interchange')).toEqual(INTERCHANGE_CODES);
  });
});

describe('docs/homework.md', () => {
  const page = readFileSync(new URL('../../docs/homework.md', import.meta.url), 'utf8');

  it('gives every value as the code has it', () => {
    const told = [...page.matchAll(/^\| `([A-Z_]+)` \| ([\d.]+) \|$/gm)].map(([, name, value]) => [
      name,
      Number(value),
    ]);
    const numbers = Object.entries(homework).filter(([, value]) => typeof value === 'number');
    expect(numbers.length).toBeGreaterThan(4);
    expect(Object.fromEntries(told)).toEqual(Object.fromEntries(numbers));
  });
});
