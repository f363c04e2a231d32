/** How often each strategy gets whole questions right, and what share of the marks it earns, by kind and by skill. */
import type { Mark, QuestionKind } from '../../shared/question.ts';
import { markAnswer } from '../../src/questions/index.ts';
import type { Case, Seen, Strategy } from './seen.ts';
import { constant } from './strategies/constant.ts';
import { countingNames } from './strategies/counting-names.ts';
import { learned } from './strategies/learned.ts';
import { alwaysNothing, alwaysWhole } from './strategies/one-reading.ts';
import { readingLabels, remembering } from './strategies/reading-labels.ts';

export const STRATEGIES: readonly Strategy[] = [
  constant,
  readingLabels,
  remembering,
  countingNames,
  alwaysNothing,
  alwaysWhole,
  learned,
];

export interface Guessed {
  readonly kind: QuestionKind;
  readonly skill: string;
  readonly strategy: string;
  /** Whole questions right, 0 to 1. */
  readonly right: number;
  /** Mean share of the marks, 0 to 1. */
  readonly share: number;
  /** The same before it is cut off at nothing: what guessing earns where what it loses counts too, -1 to 1. */
  readonly net: number;
  readonly questions: number;
}

/** Right minus wrong, each wrong part by how many it could have been (as src/questions/marking.ts, without its floor). */
function netOf({ parts }: Mark, { items }: Seen): number {
  const earned = parts.map(({ correct }, index) => {
    const others = items[index]!.values.length - 1;
    return correct ? 1 : others > 0 ? -1 / others : 0;
  });
  return mean(earned);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Learns from some questions, answers others. Of each kind a row for every skill, and one for all, whose skill is `all`. */
export function measure(learning: readonly Case[], asked: readonly Case[]): Guessed[] {
  const kinds = [...new Set(asked.map(({ seen }) => seen.kind))];
  return kinds.flatMap((kind) => {
    const ofKind = ({ seen }: Case): boolean => seen.kind === kind;
    const cases = asked.filter(ofKind);
    return STRATEGIES.flatMap((strategy): Guessed[] => {
      const guess = strategy.learn(kind, learning.filter(ofKind));
      if (!guess) return [];
      const marks = cases.map((each) => ({
        skill: each.sampled.skill,
        mark: markAnswer(each.sampled.question, guess(each.seen)).mark,
        case: each,
      }));
      const row = (skill: string): Guessed => {
        const its = marks.filter((each) => skill === 'all' || each.skill === skill);
        return {
          kind,
          skill,
          strategy: strategy.id,
          right: mean(its.map(({ mark }) => Number(mark.correct))),
          share: mean(its.map(({ mark }) => mark.share)),
          net: mean(its.map(({ mark, case: { seen } }) => netOf(mark, seen))),
          questions: its.length,
        };
      };
      return ['all', ...new Set(marks.map(({ skill }) => skill))].map(row);
    });
  });
}
