/**
 * The codes of everything that can be wrong with a list of skills or with what is wished of a plan. Once given, a code keeps
 * its meaning; one that is given up is not used again. docs/errors.md says what each means.
 */
import type { MemoryProblemSaid } from '../words/index.ts';
import { type CodeOf, problemSaying } from '../words/problems.ts';

export const MEMORY_CODES = [
  'duplicate-skill',
  'unknown-skill',
  'skill-circle',
  'assessment-past',
  'assessment-far',
] as const satisfies readonly CodeOf<MemoryProblemSaid['says']>[];

export const memoryProblem = problemSaying<MemoryProblemSaid>;
