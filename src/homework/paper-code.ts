/**
 * The code of a printed paper: eight random characters and a check character, `K7M 2QP 9DX`. It is on every page and is
 * typed when marks are entered, so it has no look-alikes, and a slip of typing is noticed.
 *
 * The check is that of ISO 7064's pure systems with one check character (as its MOD 37-2; from memory), on the prime 31: the
 * characters' values, each weighed with a power of a radix, sum up to 1. A prime modulus notices every single wrong character;
 * two that have changed places are noticed wherever they stand, because 3 is a primitive root of 31 and so no two of the
 * weights are alike.
 */
import type { Checked } from '../../shared/problem.ts';
import type { HomeworkProblemSaid } from '../words/index.ts';
import { homeworkProblem } from './problem-codes.ts';

/** Digits and capitals without 0 and O, 1, I and L: 31 of them. */
export const CODE_LETTERS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
/** Random characters; the check character comes after them. */
const RANDOM = 8;
const LENGTH = RANDOM + 1;
const MODULUS = CODE_LETTERS.length;
const RADIX = 3;
const GROUP = 3;

/** Bytes that a code is made from: 80 bits, so that every code is as likely as any other to one part in 2^40. */
export const CODE_BYTES = 10;

/** What comes before the check character, summed up and multiplied once more. */
const summed = (text: string): number =>
  [...text].reduce((sum, letter) => ((sum + CODE_LETTERS.indexOf(letter)) * RADIX) % MODULUS, 0);

const checkLetter = (text: string): string => CODE_LETTERS[(MODULUS + 1 - summed(text)) % MODULUS]!;

/**
 * A code from random bytes; equal bytes give the same code. Whoever keeps papers keeps codes unique.
 *
 * @throws RangeError when there are fewer than `CODE_BYTES`
 */
export function codeOf(bytes: Uint8Array): string {
  if (bytes.length < CODE_BYTES) throw new RangeError(`a code is made from ${CODE_BYTES} random bytes`);
  let rest = bytes.reduce((sum, byte) => sum * 256n + BigInt(byte), 0n);
  let text = '';
  for (let at = 0; at < RANDOM; at++) {
    text += CODE_LETTERS[Number(rest % BigInt(MODULUS))]!;
    rest /= BigInt(MODULUS);
  }
  return `${text}${checkLetter(text)}`;
}

/** As it is printed: `K7M 2QP 9DX`. */
export const codeInGroups = (code: string): string =>
  code.replace(new RegExp(`.{${GROUP}}(?=.)`, 'gu'), '$& ');

/** More than anybody types for a code; what comes after is not shown again. */
const SHOWN = 40;

/**
 * Reads a code as somebody typed it: small letters, spaces, hyphens and full stops between groups don't matter. Fails with
 * `homework-code-letter`, `homework-code-length` and `homework-code-check`.
 */
export function readCode(text: string): Checked<string> {
  const bare = text.replace(/[\s.\-_\u2010-\u2015\u2212]/gu, '').toUpperCase();
  const stray = [...new Set(bare)].filter((letter) => !CODE_LETTERS.includes(letter));
  const fail = (said: HomeworkProblemSaid): Checked<string> => ({
    ok: false,
    problems: [homeworkProblem(said)],
  });
  if (stray.length > 0)
    return fail({ says: 'homework-code-letter', letters: stray.join('').slice(0, SHOWN) });
  const { length } = bare;
  if (length !== LENGTH) return fail({ says: 'homework-code-length', length, needed: LENGTH });
  if (checkLetter(bare.slice(0, RANDOM)) !== bare[RANDOM])
    return fail({ says: 'homework-code-check', code: codeInGroups(bare) });
  return { ok: true, value: bare };
}
