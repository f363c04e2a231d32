import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Attempt, PartsCounted } from '../../shared/memory.ts';
import type { QuestionKind } from '../../shared/question.ts';
import { answersToShow, evidenceAfter, weightOf } from '../../src/memory/evidence.ts';
import { MOST_EVIDENCE, PROVEN_AT, ratioOf, SHOWN_AT } from '../../src/memory/index.ts';
import { KINDS } from '../../src/questions/index.ts';
import { luckWithCourse, luckWithStates } from '../../src/questions/luck.ts';

const attempt = (parts: PartsCounted): Attempt => ({
  share: parts.right === parts.asked ? 1 : 0,
  parts,
  help: { hint: false, explanation: false },
  secondsUsed: null,
  secondsExpected: 60,
});
const ratio = (right: number, asked: number, luck: number): number =>
  ratioOf(attempt({ right, asked, luck }));
const lamps = (right: number, asked: number): number => ratio(right, asked, luckWithStates(asked));

const page = readFileSync(new URL('../../docs/memory.md', import.meta.url), 'utf8');

describe('how likely an answer is', () => {
  it('is for three lamps as docs/memory.md works it out by hand', () => {
    // a = 0.95³ = 0.857375, g = 0.15.
    expect(lamps(3, 3)).toBeCloseTo(0.857375 / 0.15, 9);
    expect(lamps(2, 3)).toBeCloseTo(0.142625 / 0.85, 9);
    // Two or three wrong: 3 · 0.95 · 0.05² + 0.05³ = 0.00725; by coins 4 of 8, and one of them is all right.
    expect(lamps(1, 3)).toBeCloseTo(0.00725 / (0.85 * (4 / 7)), 9);
    expect(lamps(0, 3)).toBe(lamps(1, 3));
    expect(page).toContain('all right is 5.72, one wrong 0.168, two wrong 0.015.');
  });

  it('is for one thing asked: a meter, a wiring of four choices, of two, one lamp', () => {
    expect(ratio(1, 1, 0.2)).toBeCloseTo(4.75, 9);
    expect(ratio(0, 1, 0.2)).toBeCloseTo(0.0625, 9);
    expect(ratio(1, 1, 0.3)).toBeCloseTo(0.95 / 0.3, 9);
    expect(ratio(1, 1, 0.55)).toBeCloseTo(0.95 / 0.55, 9);
    expect(lamps(1, 1)).toBeCloseTo(1.9, 9);
    expect(lamps(0, 1)).toBeCloseTo(0.1, 9);
  });

  it('is that of heads or tails where nobody counted the parts', () => {
    const { parts: _, ...uncounted } = attempt({ right: 1, asked: 1, luck: 0.2 });
    expect(ratioOf(uncounted)).toBeCloseTo(1.9, 9);
    expect(ratioOf({ ...uncounted, share: 0.9 })).toBeCloseTo(0.1, 9);
  });

  const arbitraryAsked = fc.record({
    asked: fc.integer({ min: 1, max: 40 }),
    luck: fc.constantFrom(0.05, 0.1, 0.15, 0.2, 0.3, 0.55, 0.9, 1),
  });

  it('is 1 on average or less for everybody who guesses no better than the table says, however they do it', () => {
    fc.assert(
      fc.property(
        arbitraryAsked,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }),
        (asked, skill, weights) => {
          // All right as often as can be or less, and the rest spread over the other counts in any way.
          const whole = asked.luck * skill;
          const others = weights.slice(0, asked.asked).map((weight) => weight + 1e-6);
          const total = others.reduce((sum, weight) => sum + weight, 0);
          const mean = others.reduce(
            (sum, weight, right) =>
              sum + ((1 - whole) * weight * ratioOf(attempt({ ...asked, right }))) / total,
            whole * ratioOf(attempt({ ...asked, right: asked.asked })),
          );
          expect(mean).toBeLessThanOrEqual(1 + 1e-9);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('is exactly 1 on average for somebody who guesses as well as the table says and else slips once', () => {
    for (const asked of [2, 3, 5, 8, 12]) {
      const luck = luckWithCourse(asked);
      const mean = luck * ratio(asked, asked, luck) + (1 - luck) * ratio(asked - 1, asked, luck);
      expect(mean).toBeCloseTo(1, 9);
    }
  });

  it('is no less the more is right', () => {
    fc.assert(
      fc.property(arbitraryAsked, (asked) => {
        const ratios = Array.from({ length: asked.asked + 1 }, (_, right) =>
          ratioOf(attempt({ ...asked, right })),
        );
        expect(ratios).toEqual(ratios.toSorted((one, other) => one - other));
      }),
    );
  });

  it('never takes a proof away with one wrong part in one answer', () => {
    fc.assert(
      fc.property(arbitraryAsked, (asked) => {
        // Of what somebody who can do it gets no more often than by luck, no answer says anything.
        const one = ratioOf(attempt({ ...asked, right: asked.asked - 1 }));
        expect(MOST_EVIDENCE * one).toBeGreaterThan(PROVEN_AT);
      }),
    );
  });
});

describe('evidence', () => {
  it('is with three lamps, right each time, as docs/memory.md has it', () => {
    const course: number[] = [];
    let evidence = 0;
    for (const number of [1, 2, 3]) {
      evidence = evidenceAfter(evidence, number, lamps(3, 3));
      course.push(Number(evidence.toPrecision(3)));
    }
    expect(course).toEqual([2.86, 17.3, 99.3]);
    expect(evidenceAfter(evidence, 4, lamps(3, 3))).toBe(MOST_EVIDENCE);
    expect(page).toContain('right each time: 2.86, 17.3, 99.3, 568, so proven with the fourth');
  });

  it('never grows, with 1/(n + 1) of what may still come, on average over all ways to guess', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: PROVEN_AT / 20, noNaN: true }),
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom(0.1, 0.15, 0.2, 0.5),
        fc.integer({ min: 1, max: 12 }),
        (before, number, luck, asked) => {
          const then = (right: number): number => evidenceAfter(before, number, ratio(right, asked, luck));
          const mean = luck * then(asked) + (1 - luck) * then(asked - 1);
          expect(mean + 1 / (number + 1)).toBeLessThanOrEqual(before + 1 / number + 1e-9);
        },
      ),
    );
  });

  it('gains nothing by an answer with help, too quick, or on a circuit that is known; it loses by any that is wrong', () => {
    expect(weightOf(5, 'firm', true)).toBe(5);
    expect(weightOf(5, 'sure', true)).toBe(5);
    expect(weightOf(5, 'shaky', true)).toBe(1);
    expect(weightOf(5, 'lost', true)).toBe(1);
    expect(weightOf(5, 'sure', false)).toBe(1);
    expect(weightOf(0.2, 'shaky', false)).toBe(0.2);
    expect(weightOf(0.2, 'lost', true)).toBe(0.2);
  });

  it('is at most so much, so that forgetting shows after a few answers', () => {
    expect(evidenceAfter(MOST_EVIDENCE, 9, 5)).toBe(MOST_EVIDENCE);
    let evidence = MOST_EVIDENCE;
    let wrong = 0;
    while (evidence >= SHOWN_AT) {
      wrong++;
      evidence = evidenceAfter(evidence, 50 + wrong, lamps(1, 3));
    }
    expect(wrong).toBe(2);
  });

  it('is enough to show a skill after two right answers, sooner where some of it is there', () => {
    expect(answersToShow(0, 0)).toBe(2);
    expect(answersToShow(2.5, 1)).toBe(1);
    expect(answersToShow(SHOWN_AT, 4)).toBe(0);
    expect(answersToShow(0, 30)).toBeGreaterThan(2);
  });
});

it('luck is, by kind, as docs/memory.md has it', () => {
  const luckWith = (kind: QuestionKind, question: object): number => KINDS[kind].luck(question as never);
  const things = (count: number) => ({ asked: Array.from({ length: count }, () => '-H1') });
  expect(page).toContain('| lamp-states, input-states, relay-states, still-live | 0.5^n, 0.15 at least |');
  for (const kind of ['lamp-states', 'input-states', 'relay-states', 'still-live'] as const)
    expect([1, 2, 3, 9].map((count) => luckWith(kind, things(count)))).toEqual([0.5, 0.25, 0.15, 0.15]);
  expect(page).toContain('| sequence | 0.5^n, 0.10 at least |');
  expect([2, 3, 4, 9].map((count) => luckWith('sequence', things(count)))).toEqual([0.25, 0.125, 0.1, 0.1]);
  expect(page).toContain('| wiring | 1/choices + 0.05 |');
  expect(luckWith('wiring', { choices: [1, 2, 3, 4] })).toBeCloseTo(0.3, 9);
  expect(page).toContain('| meter | 0.20 |');
  expect(luckWith('meter', {})).toBe(0.2);
  expect(Object.keys(KINDS)).toHaveLength(7);
});
