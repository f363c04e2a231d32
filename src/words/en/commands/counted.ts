/** So many of something, within a sentence. */
import { speech } from '../speech.ts';

/** The number stands as it is: figures that are compared with others, or searched for, have no groups. */
const counted =
  (one: string, other: string) =>
  (count: number): string =>
    `${count} ${speech.plural(count, { one, other })}`;

export const answers = counted('answer', 'answers');
export const faults = counted('fault', 'faults');
export const files = counted('file', 'files');
export const items = counted('item', 'items');
export const learners = counted('learner', 'learners');
export const mistakes = counted('mistake', 'mistakes');
export const papers = counted('paper', 'papers');
export const people = counted('person', 'people');
export const questions = counted('question', 'questions');
export const skills = counted('skill', 'skills');
export const slips = counted('slip', 'slips');
export const topics = counted('topic', 'topics');
