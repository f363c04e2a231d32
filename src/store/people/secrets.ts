/** What is made at random to let somebody in, and what is kept of it. */
import { createHash, randomBytes, randomInt } from 'node:crypto';
import { CODE_LETTERS } from '../../../shared/people.ts';

/** 256 bits that nobody can guess, as text for a cookie or a link. */
export const newToken = (): string => randomBytes(32).toString('base64url');

/** All that is kept of a token. A plain hash is enough: what has 256 random bits can't be found by trying. */
export const hashOf = (token: string): string => createHash('sha256').update(token).digest('base64url');

export const newJoiningCode = (): string =>
  Array.from({ length: 8 }, () => CODE_LETTERS[randomInt(CODE_LETTERS.length)]).join('');

/** A code as it is printed: two groups of four. */
export const shown = (code: string): string => `${code.slice(0, 4)}-${code.slice(4)}`;
