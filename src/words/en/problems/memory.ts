/** What can be wrong with a list of skills, and with what is wished of a plan. */
import type { StatementOf } from '../../statement.ts';

export const memoryProblems = {
  'duplicate-skill': ({ skill }: { skill: string }) => ({
    wrong: `The skill ${skill} is there twice.`,
    right: 'Give one of them another id, or leave it out.',
  }),
  'unknown-skill': ({ skill }: { skill: string }) => ({
    wrong: `There is no skill ${skill}.`,
    right: 'Name skills of the banks that are read.',
  }),
  'unknown-skill.needed': ({ skill, need }: { skill: string; need: string }) => ({
    wrong: `The skill ${skill} stands on ${need}, which there isn't.`,
    right: 'Name a skill of this bank or of one that is read with it.',
  }),
  /** `circle`: each stands on the next, and the last on the first. */
  'skill-circle': ({ circle }: { circle: readonly string[] }) => ({
    wrong: `No skill can be first: ${[...circle, circle[0]].join(' stands on ')}.`,
    right: 'Leave out one of these prerequisites.',
  }),
  'assessment-past': {
    wrong: 'The assessment is over.',
    right: 'Give a moment that lies ahead.',
  },
  'assessment-far': ({ days }: { days: number }) => ({
    wrong: `The assessment is more than ${days} days away.`,
    right: 'Practise what comes due, and plan when it is nearer.',
  }),
};
export type MemoryProblemSaid = StatementOf<typeof memoryProblems>;
