/** Where a text stops being JSON: against the engine's own reader, which says only whether it does. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonMistake } from '../../src/circuit/json-mistake.ts';

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('a mistake in JSON', () => {
  it.each([
    ['', 1, 1, undefined],
    ['{', 1, 2, undefined],
    ['{"a": 1,\n "b": }', 2, 7, '}'],
    ['{"a": 1,}', 1, 9, '}'],
    ['[1, 2,]', 1, 7, ']'],
    ['[,1]', 1, 2, ','],
    ['{"a" 1}', 1, 6, '1'],
    ['{a: 1}', 1, 2, 'a'],
    ["{'a': 1}", 1, 2, "'"],
    ['{"a": "b}', 1, 10, undefined],
    ['{"a":\r\n"b\nc"}', 2, 3, '\n'],
    ['"\\x"', 1, 2, '\\'],
    ['"\\u12"', 1, 2, '\\'],
    ['[01]', 1, 3, '1'],
    ['[1.]', 1, 3, '.'],
    ['[-]', 1, 2, '-'],
    ['[.5]', 1, 2, '.'],
    ['[NaN]', 1, 2, 'N'],
    ['[true false]', 1, 7, 'f'],
    ['{} {}', 1, 4, '{'],
    ['[}', 1, 2, '}'],
    ['[1}', 1, 3, '}'],
    ['// no\n{}', 1, 1, '/'],
    ['[😀]', 1, 2, '😀'],
    ['\ufeff{}', 1, 1, '\ufeff'],
  ])('%j has its place', (text, line, column, found) => {
    expect(jsonMistake(text)).toEqual({ line, column, found });
    expect(isJson(text)).toBe(false);
  });

  const pieces = fc
    .array(
      fc.constantFrom(
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '"a"',
        '"\\n"',
        '"\\q"',
        '"',
        '1',
        '-0.5e3',
        '0',
        ' ',
        '\n',
        'true',
        'null',
        'x',
      ),
      { maxLength: 12 },
    )
    .map((found) => found.join(''));
  const spoilt = fc
    .tuple(fc.json(), fc.nat(), fc.constantFrom('', '}', ']', ',', '"', ':', '0', '\\', '\u0001'), fc.nat(2))
    .map(([text, place, by, less]) => {
      const at = place % (text.length + 1);
      return text.slice(0, at) + by + text.slice(at + less);
    });

  it('is there just where the engine reads no JSON, and all before it could still become some', () => {
    const agrees = fc.property(fc.oneof(pieces, spoilt, fc.json()), (text) => {
      const mistake = jsonMistake(text);
      expect(mistake === undefined).toBe(isJson(text));
      if (!mistake) return;
      const before = text.split(/\r\n|\n|\r/).slice(0, mistake.line);
      before[before.length - 1] = before.at(-1)!.slice(0, mistake.column - 1);
      const beginning = before.join('\n');
      expect(isJson(beginning) || jsonMistake(beginning)?.found === undefined).toBe(true);
    });
    expect(() => fc.assert(agrees, { numRuns: 5000 })).not.toThrow();
  });

  it('is found at once in what is long, and in what is nested deep', () => {
    expect(jsonMistake('['.repeat(1_000_000))).toEqual({ line: 1, column: 1_000_001, found: undefined });
    expect(jsonMistake(`"${'a'.repeat(1_900_000)}\n"`)).toMatchObject({ found: '\n' });
  });
});
