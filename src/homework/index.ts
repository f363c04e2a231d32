/**
 * Homework: sets, papers of their own for every learner, marking, reports, and the formats in which results and people go
 * to other systems. Pure; keeping is the store's. docs/homework.md and docs/interchange.md say it in words.
 */

export { guardedCircuits } from './guarded.ts';
export {
  type Cell,
  type CsvOptions,
  type CsvTable,
  readCsv,
  withoutGuards,
  writeCsv,
} from './interchange/csv.ts';
export { type MarksRow, marksCsv, marksHead, marksLine } from './interchange/marks-csv.ts';
export type { QtiVersion } from './interchange/qti/dialect.ts';
export { type QtiRequest, qtiFiles, qtiPackage } from './interchange/qti/package.ts';
export { MANIFEST_FILES, ROSTER_COLUMNS } from './interchange/roster/columns.ts';
export { readRoster } from './interchange/roster/read-roster.ts';
export type {
  Roster,
  RosterClass,
  RosterEnrollment,
  RosterFrame,
  RosterUser,
} from './interchange/roster/types.ts';
export { writeRoster } from './interchange/roster/write-roster.ts';
export {
  isoDuration,
  XAPI_VERSION,
  type XapiRequest,
  type XapiStatement,
  xapiStatements,
} from './interchange/xapi.ts';
export { zipFiles } from './interchange/zip.ts';
export { countedAnswers } from './marking/count.ts';
export { markInSteps, markPaper } from './marking/mark-paper.ts';
export { recordsOf } from './marking/records.ts';
export { markFromShort, marksFromShort, type ShortMark, shortMark } from './marking/short-mark.ts';
export { countingAttempt, earnedOf, overrideMark, type Total, totalOf } from './marking/totals.ts';
export { CODE_BYTES, codeInGroups, codeOf, readCode } from './paper-code.ts';
export { mayRemember, nextAttempt, type PaperState, type PaperTimes, paperStateOf } from './paper-state.ts';
export {
  DIFFICULTY_LEAST,
  DIFFICULTY_SHARE,
  questionDifficulty,
  toleranceOf,
} from './papers/difficulty.ts';
export {
  joinPapers,
  paperAgain,
  paperFor,
  paperInSteps,
  papersFor,
  publicPaper,
  type Taken,
  takenBy,
} from './papers/paper.ts';
export {
  type Level,
  type PlacesRequest,
  type PlaceWish,
  placeFor,
  placesFor,
  placesInSteps,
} from './places.ts';
export { HOMEWORK_CODES, INTERCHANGE_CODES, interchangeProblem } from './problem-codes.ts';
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
export { type TermReport, type TermRow, type TermWork, termReport } from './reports/term-report.ts';
export { tellClassReport, tellLearnerReport, tellTermReport } from './reports/told.ts';
export { checkSet, mayReview, type Phase, phaseOf } from './set.ts';
