import fc from 'fast-check';
import './support/words.ts';
import { describe, expect, it } from 'vitest';
import type { PaperRow } from '../../shared/homework-views.ts';
import { CODE_BYTES, codeInGroups, codeOf, readCode } from '../../src/homework/index.ts';
import { paperTyped } from '../../src/web/screens/homework/tutor/paper-typed.ts';

const row = (name: string, code: string): PaperRow => ({
  id: name,
  code,
  learner: name,
  name,
  attempt: 1,
  madeAt: 0,
  begunAt: null,
  submittedAt: null,
  markedAt: null,
  saved: 0,
  tried: 0,
  total: null,
});
const code = (start: number): string =>
  codeOf(Uint8Array.from({ length: CODE_BYTES }, (_, at) => start + at));
const [ONE, OTHER] = [code(1), code(90)];
const PAPERS = [row('Fern Alder', ONE), row('Gorse Beck', OTHER)];

describe('the name under a code that is typed', () => {
  it('is found however the code is typed that the server takes', () => {
    const groups = codeInGroups(ONE);
    for (const typed of [ONE, groups, groups.toLowerCase(), groups.replaceAll(' ', '.'), ` ${groups} `])
      expect(paperTyped(typed, PAPERS)).toEqual({ row: PAPERS[0], amiss: '' });
    for (const hyphen of ['-', '\u2010', '\u2013', '\u2212', '_', '\u00A0'])
      expect(paperTyped(groups.replaceAll(' ', hyphen), PAPERS).row?.name).toBe('Fern Alder');
  });

  it('is never that of a code which the server does not read as this one', () => {
    fc.assert(
      fc.property(fc.constantFrom(ONE, OTHER), fc.nat(8), fc.string({ maxLength: 3 }), (of, at, put) => {
        const typed = of.slice(0, at) + put + of.slice(at + 1);
        const read = readCode(typed);
        const { row: found } = paperTyped(typed, PAPERS);
        expect(found?.code).toBe(read.ok ? read.value : undefined);
      }),
    );
  });

  it('is waited for while the code is being typed, and what is amiss is said once it is whole', () => {
    for (let length = 0; length < ONE.length; length++)
      expect(paperTyped(codeInGroups(ONE.slice(0, length)), PAPERS)).toEqual({ amiss: '' });
    expect(paperTyped(code(40), PAPERS).amiss).toBe('No paper of this set has this code so far.');
    expect(paperTyped(`${ONE.slice(1, 2)}${ONE.slice(0, 1)}${ONE.slice(2)}`, PAPERS).amiss).toMatch(
      /is no code/,
    );
    expect(paperTyped('K1', PAPERS).amiss).toMatch(/A code has no 1 in it\./);
    expect(paperTyped(`${ONE}2`, PAPERS).amiss).toMatch(/The code has 10 characters\./);
  });
});
