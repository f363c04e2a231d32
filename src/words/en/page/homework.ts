/** What a learner reads of homework, and what tutors read there too. */
import { common } from './homework/common.ts';
import { marked } from './homework/marked.ts';
import { mine } from './homework/mine.ts';
import { paper } from './homework/paper.ts';
import { review } from './homework/review.ts';

export const homework = { common, marked, mine, paper, review };

export type HomeworkWords = typeof homework;
