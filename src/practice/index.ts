/** The main job in one place: choose a skill, make a question, mark the answer, remember it. Pure; keeping is the store's. */
export { courseOf } from './course.ts';
export { growthOf } from './growth.ts';
export { bothLeft, ideasTold } from './ideas-left.ts';
export { issuedIn, MOST_CANDIDATES, passedOverFor, questionIssued } from './issued.ts';
export { type Given, historyOf, type Judged, judge } from './judge.ts';
export { type LessonFor, lessonFor } from './lesson-for.ts';
export { inShort, lineOf } from './line.ts';
export { nextTask, type TaskRequest } from './next-task.ts';
export { partsCounted } from './parts-counted.ts';
export { withPlacement } from './placement.ts';
export { MOST_PLACING, type Placing, type PlacingAnswer, placing } from './placing.ts';
export { type SkillResult, type Summary, summarise } from './summary.ts';
export type { IdeasLeft } from './telling-apart.ts';
export type { Course, Task } from './types.ts';
export { wantsLesson } from './wants-lesson.ts';
