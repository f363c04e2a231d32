/**
 * How the grade follows from an answer: the one place where that is written. The learner never chooses it. The rows are
 * read from the top and the first that fits decides; docs/memory.md prints the same table and a test holds them equal.
 */
import type { Attempt, Grade } from '../../shared/memory.ts';
import type { GradingSaid } from '../words/index.ts';
import { isLost, rightShare } from './evidence.ts';

/** Answered faster than this part of the expected time, nobody has read the drawing. Common practice, no source. */
export const TOO_QUICK = 0.1;
/** Up to this part of the expected time is fluent. Common practice, no source. */
export const FLUENT = 0.5;

export interface GradeRule {
  /** What was the case: it finishes "graded so because ...". */
  readonly because: GradingSaid;
  readonly grade: Grade;
  readonly fits: (attempt: Attempt) => boolean;
}

/** Time used as a part of the time expected; where nobody measured it, exactly as expected. */
const pace = ({ secondsUsed, secondsExpected }: Attempt): number =>
  secondsUsed === null ? 1 : secondsUsed / secondsExpected;

/**
 * Time can lift a grade and, when it is impossibly short, lower it; being slow never does. An interrupted or a slow
 * reader has not forgotten anything.
 */
export const GRADE_RULES: readonly GradeRule[] = [
  {
    because: { says: 'explained' },
    grade: 'lost',
    fits: ({ help }) => help.explanation,
  },
  {
    // Of the parts themselves: the marks are put right for guessing already, and once is enough.
    because: { says: 'below' },
    grade: 'lost',
    fits: isLost,
  },
  { because: { says: 'incomplete' }, grade: 'shaky', fits: (attempt) => rightShare(attempt) < 1 },
  { because: { says: 'hinted' }, grade: 'shaky', fits: ({ help }) => help.hint },
  {
    because: { says: 'tooQuick', share: TOO_QUICK },
    grade: 'shaky',
    fits: (attempt) => pace(attempt) < TOO_QUICK,
  },
  {
    because: { says: 'fluent', share: FLUENT },
    grade: 'sure',
    fits: (attempt) => pace(attempt) <= FLUENT,
  },
  { because: { says: 'otherwise' }, grade: 'firm', fits: () => true },
];

/** The grade of an answer and the reason for it. */
export function gradeOf(attempt: Attempt): Pick<GradeRule, 'grade' | 'because'> {
  const rule = GRADE_RULES.find(({ fits }) => fits(attempt));
  if (!rule) throw new RangeError('the last rule fits everything');
  return { grade: rule.grade, because: rule.because };
}
