/** What a question that stands there may still need: its mark, and a hint. A module of its own, for the page fetches it later. */
import type { Answer, Mark, Question } from '../../shared/question.ts';
import { explainerOf } from './explain/explainers.ts';
import { markWith } from './marking.ts';
import { kindOf } from './registry.ts';

/** Marks an answer: part by part, with the wrong ideas that give exactly this answer, and why the right one is right. */
export const markAnswer = (question: Question, answer: Answer): Mark =>
  markWith(kindOf(question.kind), question, answer);

/** The first thing to look at. It doesn't tell the answer. */
export const hintFor = (question: Question): string => explainerOf(question.kind).hint(question);
