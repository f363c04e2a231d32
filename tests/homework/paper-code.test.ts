import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CODE_BYTES, codeInGroups, codeOf, readCode } from '../../src/homework/index.ts';
import { CODE_LETTERS } from '../../src/homework/paper-code.ts';
import { told } from '../support/in-english.ts';

const bytes = fc.uint8Array({ minLength: CODE_BYTES, maxLength: 32 });
const code = bytes.map(codeOf);
const problemOf = (text: string): string | undefined => {
  const read = readCode(text);
  return read.ok ? undefined : read.problems[0]!.code;
};

describe("a paper's code", () => {
  it('is nine characters without look-alikes, and reads back as itself', () => {
    expect(CODE_LETTERS).toHaveLength(31);
    for (const alike of '01OIL') expect(CODE_LETTERS).not.toContain(alike);
    fc.assert(
      fc.property(code, (made) => {
        expect(made).toMatch(/^[2-9A-HJKMNP-Z]{9}$/);
        expect(readCode(made)).toEqual({ ok: true, value: made });
      }),
    );
  });

  it('is the same from the same bytes, and nearly always another from others', () => {
    const made = Array.from({ length: 5000 }, (_, number) =>
      codeOf(
        Uint8Array.from(
          { length: 10 },
          (_, at) => (Math.imul(number + 1, 2654435761 + at * 40503) >>> 9) & 255,
        ),
      ),
    );
    expect(new Set(made).size).toBe(5000);
    expect(codeOf(new Uint8Array(10))).toBe(codeOf(new Uint8Array(10)));
    expect(() => codeOf(new Uint8Array(9))).toThrow(RangeError);
  });

  it('uses every character in every place about as often', () => {
    const counts = Array.from({ length: 8 }, () => new Map<string, number>());
    for (let number = 0; number < 31 * 31 * 4; number++) {
      const seed = Uint8Array.from(
        { length: 10 },
        (_, at) => Math.imul(number + 7, 0x9e3779b1 ^ (at * 0x85ebca6b)) >>> 24,
      );
      [...codeOf(seed)].slice(0, 8).forEach((letter, at) => {
        const count = counts[at]!;
        count.set(letter, (count.get(letter) ?? 0) + 1);
      });
    }
    for (const count of counts) {
      expect(count.size).toBe(31);
      expect(Math.min(...count.values())).toBeGreaterThan(60);
      expect(Math.max(...count.values())).toBeLessThan(200);
    }
  });

  it('is told from every text that differs in one character', () => {
    fc.assert(
      fc.property(code, fc.nat(8), (made, at) => {
        for (const letter of CODE_LETTERS)
          if (letter !== made[at])
            expect(problemOf(`${made.slice(0, at)}${letter}${made.slice(at + 1)}`)).toBe(
              'homework-code-check',
            );
      }),
    );
  });

  it('is told from every text in which two different characters have changed places, neighbours or not', () => {
    fc.assert(
      fc.property(code, (made) => {
        for (let one = 0; one < 9; one++)
          for (let other = one + 1; other < 9; other++) {
            if (made[one] === made[other]) continue;
            const letters = [...made];
            [letters[one], letters[other]] = [letters[other]!, letters[one]!];
            expect(problemOf(letters.join(''))).toBe('homework-code-check');
          }
      }),
    );
  });

  it('is read in small letters, in groups, with hyphens and with spaces round it', () => {
    fc.assert(
      fc.property(code, fc.constantFrom(' ', '-', ' - ', '–', '.'), fc.boolean(), (made, between, small) => {
        const typed = ` ${codeInGroups(made).replaceAll(' ', between)}\n`;
        expect(readCode(small ? typed.toLowerCase() : typed)).toEqual({ ok: true, value: made });
      }),
    );
    expect(codeInGroups('K7M2QP9DX')).toBe('K7M 2QP 9DX');
  });

  it('says what is wrong with one that is none', () => {
    expect(problemOf('')).toBe('homework-code-length');
    expect(problemOf('K7M 2QP')).toBe('homework-code-length');
    expect(problemOf('K7M 2QP 9DXX')).toBe('homework-code-length');
    const read = readCode('K0M 2IP 9DX');
    expect(read).toMatchObject({ ok: false, problems: [{ code: 'homework-code-letter' }] });
    if (!read.ok) expect(told(read.problems)[0]!.message).toContain('0I');
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => {
        const found = readCode(text);
        if (!found.ok) expect(found.problems).toHaveLength(1);
      }),
    );
  });
});
