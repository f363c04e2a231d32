import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Attempt, attempt as attemptSchema, grade as gradeSchema } from '../../shared/memory.ts';
import { GRADE_RULES, gradeOf } from '../../src/memory/index.ts';
import { say } from '../../src/words/index.ts';
import { english } from '../support/in-english.ts';
import { arbitraryAttempt } from './arbitraries.ts';

const answered = (part: Partial<Attempt>): Attempt => ({
  share: 1,
  help: { hint: false, explanation: false },
  secondsUsed: 40,
  secondsExpected: 40,
  ...part,
});
const grade = (part: Partial<Attempt>): string => gradeOf(answered(part)).grade;
const GRADES = gradeSchema.options;

describe('the grade of an answer', () => {
  it('is firm for full marks without help in the expected time', () => {
    expect(grade({})).toBe('firm');
  });

  it('is lost when the explanation was opened first, whatever was answered then', () => {
    expect(grade({ help: { hint: false, explanation: true }, secondsUsed: 10 })).toBe('lost');
  });

  const counted = (right: number, asked: number, share: number): string =>
    grade({ share, parts: { asked, right, luck: 0.15 } });

  it('is lost where more than a third of the parts are wrong, and shaky from there to the last part', () => {
    // What the marks are doesn't count: right minus wrong, they are 1/3, 1/2, 0 and 1/3.
    expect(counted(2, 3, 1 / 3)).toBe('shaky');
    expect(counted(3, 4, 1 / 2)).toBe('shaky');
    expect(counted(2, 4, 0)).toBe('lost');
    expect(counted(4, 6, 1 / 3)).toBe('shaky');
    expect(counted(3, 6, 0)).toBe('lost');
    expect(counted(12, 12, 1)).toBe('firm');
  });

  it('is lost where the one part that was asked is wrong, one of two, or nothing could be asked', () => {
    expect(counted(0, 1, 0)).toBe('lost');
    expect(counted(1, 2, 0)).toBe('lost');
    expect(counted(0, 0, 0)).toBe('lost');
  });

  it('goes by the share of the marks where nobody counted the parts, which is never more', () => {
    expect(grade({ share: 0 })).toBe('lost');
    expect(grade({ share: 0.66 })).toBe('lost');
    expect(grade({ share: 0.67 })).toBe('shaky');
    expect(grade({ share: 0.99 })).toBe('shaky');
  });

  it('is shaky for full marks with a hint', () => {
    expect(grade({ help: { hint: true, explanation: false }, secondsUsed: 10 })).toBe('shaky');
  });

  it('is sure up to half the expected time, and shaky below a tenth of it', () => {
    expect(grade({ secondsUsed: 20.1 })).toBe('firm');
    expect(grade({ secondsUsed: 20 })).toBe('sure');
    expect(grade({ secondsUsed: 4 })).toBe('sure');
    expect(grade({ secondsUsed: 3.9 })).toBe('shaky');
  });

  it('never falls because somebody was slow or nobody measured', () => {
    expect(grade({ secondsUsed: 4000 })).toBe('firm');
    expect(grade({ secondsUsed: null })).toBe('firm');
  });

  it('always follows, with the reason of the first row that fits', () => {
    fc.assert(
      fc.property(arbitraryAttempt, (attempt) => {
        expect(attemptSchema.parse(attempt)).toEqual(attempt);
        const { grade, because } = gradeOf(attempt);
        expect(GRADE_RULES.find(({ fits }) => fits(attempt))).toMatchObject({ grade, because });
      }),
    );
  });

  it('is never better with help, or with fewer parts right, than without', () => {
    const rank = (attempt: Attempt): number => GRADES.indexOf(gradeOf(attempt).grade);
    fc.assert(
      fc.property(arbitraryAttempt, fc.double({ min: 0, max: 1, noNaN: true }), (attempt, part) => {
        const alone = { ...attempt, help: { hint: false, explanation: false } };
        expect(rank(attempt)).toBeLessThanOrEqual(rank(alone));
        const { parts } = attempt;
        const fewer = {
          ...attempt,
          share: attempt.share * part,
          ...(parts && { parts: { ...parts, right: Math.floor(parts.right * part) } }),
        };
        expect(rank(fewer)).toBeLessThanOrEqual(rank(attempt));
      }),
    );
  });

  it('is the table in docs/memory.md, row by row', () => {
    const page = readFileSync(new URL('../../docs/memory.md', import.meta.url), 'utf8');
    const table = page
      .split('\n')
      .filter((line) => /^\| \d+ \|/.test(line))
      .map((line) =>
        line
          .split('|')
          .slice(1, -1)
          .map((cell) => cell.trim().replaceAll('`', '')),
      );
    expect(table).toEqual(
      GRADE_RULES.map(({ because, grade }, index) => [
        String(index + 1),
        say(english.grading, because),
        grade,
      ]),
    );
  });
});
