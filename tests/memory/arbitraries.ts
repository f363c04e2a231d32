/** Random answers, histories and skill graphs for the properties. */
import fc from 'fast-check';
import type { Attempt, BegunRecall, Grade, Recall, Skill, SkillAnswer } from '../../shared/memory.ts';
import { checkSkills, review, type SkillGraph } from '../../src/memory/index.ts';
import { told } from '../support/in-english.ts';

export const DAY = 86_400_000;
/** Some morning. */
export const START = 1_760_000_000_000;

export const arbitraryGrade = fc.constantFrom<Grade>('lost', 'shaky', 'firm', 'sure');

/** Answers so telling that two right ones show a skill and three prove it, and one that is lost takes both away. */
const RATIOS: Readonly<Record<Grade, number>> = { lost: 0.01, shaky: 0.2, firm: 9, sure: 9 };

const SHARES: Readonly<Record<Grade, number>> = { lost: 0, shaky: 0.5, firm: 1, sure: 1 };

/** A review of which nothing matters but its grade. */
export const reviewAs = (recall: Recall, grade: Grade, at: number, circuit: string): BegunRecall =>
  review(recall, { grade, at, circuit, share: SHARES[grade], ratio: RATIOS[grade] });

const arbitraryParts = fc
  .record({ asked: fc.nat(30), wrong: fc.nat(5), luck: fc.constantFrom(0.1, 0.15, 0.3, 0.5, 1) })
  .map(({ asked, wrong, luck }) => ({ asked, right: Math.max(0, asked - wrong), luck }));

export const arbitraryAttempt: fc.Arbitrary<Attempt> = fc
  .record({
    share: fc.oneof(fc.constantFrom(0, 0.5, 0.75, 1), fc.double({ min: 0, max: 1, noNaN: true })),
    parts: fc.option(arbitraryParts),
    help: fc.record({ hint: fc.boolean(), explanation: fc.boolean() }),
    secondsUsed: fc.option(fc.double({ min: 0, max: 3600, noNaN: true })),
    secondsExpected: fc.double({ min: 0.5, max: 600, noNaN: true }),
  })
  .map(({ parts, ...attempt }) => (parts ? { ...attempt, parts } : attempt));

/** A moment within three years, before or after START. */
export const arbitraryMoment = fc.integer({ min: START - 300 * DAY, max: START + 800 * DAY });

export const arbitraryReview = fc.record({
  grade: arbitraryGrade,
  at: arbitraryMoment,
  circuit: fc.constantFrom('c1', 'c2', 'c3', 'c4'),
});

export const SKILLS = ['reading', 'making', 'breaking', 'changing', 'constructor'];

export const arbitraryAnswer: fc.Arbitrary<SkillAnswer> = fc.record({
  id: fc.uuid(),
  skill: fc.constantFrom(...SKILLS),
  circuit: fc.constantFrom('c1', 'c2', 'c3', 'c4'),
  at: arbitraryMoment,
  attempt: arbitraryAttempt,
});

/** Moments go forward by up to a fortnight from answer to answer. */
export const arbitraryHistory: fc.Arbitrary<readonly SkillAnswer[]> = fc
  .array(fc.tuple(arbitraryAnswer, fc.integer({ min: 0, max: 14 * DAY })), { maxLength: 40 })
  .map((parts) => {
    let at = START;
    return parts.map(([answer, later]) => {
      at += later;
      return { ...answer, at };
    });
  });

/** Skills s0, s1, ... that stand on earlier ones only, shuffled. */
export const arbitrarySkills: fc.Arbitrary<readonly Skill[]> = fc
  .array(fc.array(fc.nat(), { maxLength: 3 }), { minLength: 1, maxLength: 14 })
  .map((needs) =>
    needs.map((picks, index) => ({
      id: `s${index}`,
      title: `Skill ${index}`,
      needs: index === 0 ? [] : [...new Set(picks.map((pick) => `s${pick % index}`))],
    })),
  )
  .chain((skills) => fc.shuffledSubarray(skills, { minLength: skills.length }));

export function graphOf(skills: readonly Skill[]): SkillGraph {
  const checked = checkSkills(skills);
  if (!checked.ok)
    throw new Error(
      told(checked.problems)
        .map(({ message }) => message)
        .join('\n'),
    );
  return checked.value;
}

export const skill = (id: string, ...needs: string[]): Skill => ({ id, title: id, needs });
