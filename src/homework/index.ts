/**
 * Homework: sets, papers of their own for every learner, marking, reports, and the formats in which results and people go
 * to other systems. Pure; keeping is the store's. docs/homework.md and docs/interchange.md say it in words.
 */
export { countedAnswers } from './marking/count.ts';
export { markPaper } from './marking/mark-paper.ts';
export { recordsOf } from './marking/records.ts';
export { countingAttempt, earnedOf, overrideMark, type Total, totalOf } from './marking/totals.ts';
export {
  DIFFICULTY_LEAST,
  DIFFICULTY_SHARE,
  questionDifficulty,
  toleranceOf,
} from './papers/difficulty.ts';
export { paperAgain, paperFor, papersFor, publicPaper, type Taken, takenBy } from './papers/paper.ts';
export { type Level, type PlacesRequest, type PlaceWish, placeFor, placesFor } from './places.ts';
export {
  HOMEWORK_PROBLEMS,
  type HomeworkCode,
  INTERCHANGE_PROBLEMS,
  type InterchangeCode,
} from './problem-codes.ts';
export {
  type ClassIdea,
  type ClassReport,
  type ClassWork,
  classReport,
  type LearnerRow,
  type PlaceReport,
  type SkillColumn,
} from './reports/class-report.ts';
export {
  type Competence,
  type CompetenceMatrix,
  competenceMatrix,
  type Person,
  type PersonRow,
  type Refresher,
  refreshersDue,
} from './reports/competence.ts';
export { ideasIn, type ShownIdea } from './reports/ideas.ts';
export {
  type LearnerReport,
  learnerReport,
  REVISE_BELOW,
  type SkillMarks,
  type ToRevise,
} from './reports/learner-report.ts';
export { type Concern, FIRM_IDEA, LOW_SHARE, type LookAfter, lookAfter } from './reports/look-after.ts';
export {
  alpha,
  correlation,
  discrimination,
  facility,
  GROUP_SHARE,
  type Scores,
  upperLower,
} from './reports/statistics.ts';
export { checkSet, mayReview, type Phase, phaseOf } from './set.ts';
