import type { FixedQuestion, LessonCircuit } from '../../../shared/bank.ts';
import { BANK_LIMITS } from '../limits.ts';
import type { Position } from '../position.ts';

/** What the blocks of a topic have made so far, in the order of the file. */
export interface TopicBlocks {
  /** Circuits that later blocks may name; undefined: there is one of this name, and it couldn't be read. */
  readonly circuits: Map<string, LessonCircuit | undefined>;
  readonly questions: FixedQuestion[];
  /** Names of questions met so far, with those that couldn't be read. */
  readonly questionNames: Set<string>;
  /** How much the solver may still be asked; see the limits. */
  solvingLeft: number;
  /** Where the skills of questions are named, to be checked when all skills are known. */
  readonly skillsNamed: { readonly skill: string; readonly position: Position }[];
}

export const newTopicBlocks = (): TopicBlocks => ({
  circuits: new Map(),
  questions: [],
  questionNames: new Set(),
  solvingLeft: BANK_LIMITS.solving,
  skillsNamed: [],
});
