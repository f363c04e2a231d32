/**
 * The codes of everything that can be wrong with a list of skills or with what is wished of a plan. Once given, a code keeps
 * its meaning; one that is given up is not used again. docs/errors.md has the same rows.
 */
export const MEMORY_PROBLEMS = {
  'duplicate-skill': 'Two skills with the same id.',
  'unknown-skill': 'A prerequisite, or a skill that a plan is wanted for, that there is not.',
  'skill-circle': 'Skills that stand on each other in a circle, so that none can be the first.',
  'assessment-past': 'A plan towards an assessment that is over.',
  'assessment-far': 'A plan towards an assessment that is further away than plans reach.',
} as const;

export type MemoryCode = keyof typeof MEMORY_PROBLEMS;

/** Holds a code to the table while it is written down. */
export const memoryCode = (code: MemoryCode): MemoryCode => code;
