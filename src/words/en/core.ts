/** English: what defines the words of every language. */
import { answering } from './answering.ts';
import { asking } from './asking.ts';
import { interchange } from './interchange.ts';
import { paper } from './paper.ts';
import { server } from './server/index.ts';
import { typed } from './typed.ts';

export const english = { ...asking, ...answering, typed, paper, interchange, server };
