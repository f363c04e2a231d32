/** Memory: what a learner holds, what comes next, and what to do until the assessment. docs/memory.md says how. */
export { expectedShare } from './ability.ts';
export { ASKED_AT_MOST, type Choice, type ChoiceRequest, choose } from './choose.ts';
export { CERTAIN } from './deepen.ts';
export { MOST_EVIDENCE, PROVEN_AT, ratioOf, SHOWN_AT } from './evidence.ts';
export { forecast, type Return } from './forecast.ts';
export { GRADE_RULES, type GradeRule, gradeOf } from './grade.ts';
export { changeSettings, mergeSettings, notAheadOf, sameSettings } from './merge-settings.ts';
export { NEW_A_DAY } from './pace.ts';
export {
  ABLE,
  FURTHEST_DAYS,
  type Plan,
  type PlannedDay,
  type PlanRequest,
  type Prospect,
  planTowards,
} from './plan.ts';
export { MEMORY_CODES } from './problem-codes.ts';
export {
  dueAt,
  isDue,
  isHeld,
  isProven,
  isShown,
  newRecall,
  type Reviewed,
  retrievability,
  review,
  TARGET,
} from './recall.ts';
export {
  afterAnswer,
  countsAt,
  mergeHistories,
  type Recalls,
  recallOf,
  replay,
  speaksFor,
} from './replay.ts';
export { checkSkills, openSkills, type SkillGraph } from './skills.ts';
export { GAP_SHARE } from './spacing.ts';
