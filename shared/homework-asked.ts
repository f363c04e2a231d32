/** What the routes of homework have in common: who may call them, and what they are about. */
import { z } from 'zod';
import type { ApiProblemCode } from './api-problem.ts';
import { homeworkId } from './homework.ts';
import { paperId } from './homework-views.ts';
import { classId } from './people.ts';

export const learner = { mode: 'class', role: 'learner' } as const;
export const tutor = { mode: 'class', role: 'tutor' } as const;

export const ofSet = z.strictObject({ set: homeworkId });
export const ofPaper = z.strictObject({ paper: paperId });
export const ofClass = z.strictObject({ class: classId });

export const always = ['no-such-thing'] as const satisfies readonly ApiProblemCode[];
