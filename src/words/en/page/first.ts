/** What the page says from its first moment on: its frame, what every screen uses, practising. */
import { engine } from './engine.ts';
import { frame } from './frame.ts';
import { homeworkTold } from './homework-told.ts';
import { moments } from './moments.ts';
import { parts } from './parts.ts';
import { practise } from './practise.ts';

export const first = { engine, frame, homeworkTold, moments, parts, practise };

export type FirstWords = typeof first;
