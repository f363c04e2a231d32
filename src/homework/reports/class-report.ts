/** What a set says of a class: what to teach next, with a drawing for the board, and which places told anything. */
import type { HomeworkSet, Paper, PaperItem, PaperMark } from '../../../shared/homework.ts';
import type { Mark } from '../../../shared/question.ts';
import type { Course } from '../../practice/index.ts';
import { hopsOf } from '../marking/short-mark.ts';
import { earnedOf, type Total, totalOf } from '../marking/totals.ts';
import { ideasIn, type ShownIdea } from './ideas.ts';
import { skillMarks } from './learner-report.ts';
import { type LookAfter, lookAfter } from './look-after.ts';
import { alpha, discrimination, facility, type Scores, upperLower } from './statistics.ts';

export interface SkillColumn {
  readonly skill: string;
  readonly title: string;
  /** Mean share over those who handed in; null when nobody did. */
  readonly share: number | null;
}

export interface LearnerRow {
  readonly learner: string;
  /** `open`: there is time left. */
  readonly stands: 'marked' | 'waiting' | 'open' | 'nothing';
  /** Null: nothing handed in, or not marked yet. */
  readonly total: Total | null;
  /** Share of marks by skill, in the order of the columns; null where nothing was handed in. */
  readonly shares: readonly (number | null)[];
}

export interface ClassIdea extends ShownIdea {
  /** The smallest drawing on which it showed, with what was answered and why it is wrong; whose it was isn't told. */
  readonly example: { readonly item: PaperItem; readonly mark: Mark } | null;
}

export interface PlaceReport {
  /** From 1. */
  readonly place: number;
  readonly skill: string;
  readonly facility: number | null;
  /** Corrected item-total correlation. */
  readonly discrimination: number | null;
  /** Best 27 % less weakest 27 %. */
  readonly upperLower: number | null;
  readonly leftOut: number;
}

export interface ClassReport {
  readonly handedIn: number;
  readonly learners: number;
  readonly skills: readonly SkillColumn[];
  readonly rows: readonly LearnerRow[];
  readonly ideas: readonly ClassIdea[];
  readonly places: readonly PlaceReport[];
  /** Cronbach's alpha over the places. */
  readonly alpha: number | null;
  readonly lookAfter: readonly LookAfter[];
}

export interface ClassWork {
  readonly set: HomeworkSet;
  readonly course: Course;
  /** Everybody in the class, in the order wanted. */
  readonly learners: readonly string[];
  /** The attempt that counts of each learner who handed in. */
  readonly marks: readonly PaperMark[];
  /** Learners whose papers are handed in and have still to be marked. */
  readonly waiting?: readonly string[];
  /** Whether the set has closed; before, nobody gives concern. It has unless false is given. */
  readonly closed?: boolean;
  /** Their papers, for the examples; the report is whole without. */
  readonly papers?: readonly Paper[];
}

function exampleOf(
  { shownIn }: ShownIdea,
  marks: ReadonlyMap<string, PaperMark>,
  papers: ReadonlyMap<string, Paper>,
): ClassIdea['example'] {
  let best: { item: PaperItem; mark: Mark } | null = null;
  for (const { learner, item: index } of shownIn) {
    const paper = papers.get(learner);
    const marked = marks.get(learner);
    // A paper of another attempt has other drawings in the same places.
    if (!paper || !marked || paper.attempt !== marked.attempt) continue;
    const item = paper.items[index]!;
    if (!best || hopsOf(item) < hopsOf(best.item)) best = { item, mark: marked.items[index]!.mark };
  }
  return best;
}

const meanOf = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

/** Statistics are over those who handed in; who left out an item has earned nothing there. */
export function classReport({
  set,
  course,
  learners,
  marks,
  papers = [],
  waiting = [],
  closed = true,
}: ClassWork): ClassReport {
  const waits = new Set(waiting);
  const inClass = new Set(learners);
  const own = marks.filter(({ learner }) => inClass.has(learner));
  const byLearner = new Map(own.map((mark) => [mark.learner, mark]));
  const paperOf = new Map(papers.map((paper) => [paper.learner, paper]));
  const scores: Scores = own.map(({ items }) => items.map(earnedOf));
  const columns = [...new Set(set.places.map(({ skill }) => skill))];
  const rows = learners.map((learner): LearnerRow => {
    const mark = byLearner.get(learner);
    if (!mark) {
      const stands = waits.has(learner) ? 'waiting' : closed ? 'nothing' : 'open';
      return { learner, stands, total: null, shares: columns.map(() => null) };
    }
    const bySkill = new Map(skillMarks(mark.items, course).map(({ skill, share }) => [skill, share]));
    return {
      learner,
      stands: 'marked',
      total: totalOf(mark),
      shares: columns.map((skill) => bySkill.get(skill) ?? null),
    };
  });
  return {
    handedIn: own.length,
    learners: learners.length,
    skills: columns.map((skill, column) => ({
      skill,
      title: course.skills.get(skill)?.title ?? skill,
      share: meanOf(rows.flatMap(({ shares }) => shares[column] ?? [])),
    })),
    rows,
    ideas: ideasIn(own).map((idea) => ({ ...idea, example: exampleOf(idea, byLearner, paperOf) })),
    places: set.places.map(({ skill, marks: full }, index) => ({
      place: index + 1,
      skill,
      facility: facility(scores, index, full),
      discrimination: discrimination(scores, index),
      upperLower: upperLower(scores, index, full),
      leftOut: own.filter(({ items }) => items[index]!.answered === 'none').length,
    })),
    alpha: alpha(scores),
    lookAfter: closed ? lookAfter(learners, byLearner, waits) : [],
  };
}
