/** Long bodies are read in pieces, and are what `JSON.parse` makes of them whole. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutJson, type JsonBounds, readPieces } from '../../src/server/json-pieces.ts';

const ROOM: JsonBounds = { values: 1e6, inPiece: 1e6, deep: 1000 };
const MARK = 'a mark that nobody knows ';

function ended<T>(steps: Generator<undefined, T>): { readonly value: T; readonly steps: number } {
  for (let count = 1; ; count++) {
    const step = steps.next();
    if (step.done) return { value: step.value, steps: count };
  }
}

const cut = (text: string, bounds: Partial<JsonBounds> = {}) =>
  ended(cutJson(Buffer.from(text), { ...ROOM, ...bounds })).value;

function read(text: string): unknown {
  const bytes = Buffer.from(text);
  const { value } = ended(cutJson(bytes, ROOM));
  if (!value.ok) throw new Error(value.tooMany);
  return ended(readPieces(bytes, value.pieces, JSON.parse, MARK)).value;
}

describe('a long text', () => {
  it('is read in pieces as it is read whole', () => {
    const spaced = fc.tuple(fc.json({ maxDepth: 6 }), fc.constantFrom(undefined, 1, '\t'));
    const lists = fc.array(fc.jsonValue()).map((answers) => JSON.stringify({ answers, other: [[1], [{}]] }));
    const texts = fc.oneof(
      spaced.map(([text, space]) => JSON.stringify(JSON.parse(text), null, space)),
      lists,
    );
    const same = fc.property(texts, (text) => {
      expect(read(text)).toEqual(JSON.parse(text));
    });
    expect(() => fc.assert(same, { numRuns: 200 })).not.toThrow();
  });

  it('is not JSON in pieces either where it isn’t JSON', () => {
    const signs = fc.constantFrom('{', '}', '[', ']', '"', '\\', ',', ':', '1', '"a"', ' ');
    const alike = fc.property(fc.array(signs, { maxLength: 14 }), (some) => {
      const text = `{"answers":[${some.join('')}]}`;
      let whole: unknown;
      try {
        whole = JSON.parse(text);
      } catch {
        expect(() => read(text)).toThrow();
        return;
      }
      expect(read(text)).toEqual(whole);
    });
    expect(() => fc.assert(alike, { numRuns: 2000 })).not.toThrow();
  });

  it('is not JSON either where what isn’t stands under a name that comes again', () => {
    expect(() => read('{"answers":[{"a" 1}],"answers":[{"a":2}]}')).toThrow(SyntaxError);
    expect(read('{"answers":[{"a":1}],"answers":[{"a":2}]}')).toEqual({ answers: [{ a: 2 }] });
  });

  it('is cut at what stands in a list, and at nothing that only looks like that', () => {
    const text = '{"answers":[{"a":"}],[\\""},[2],3,"[4]"],"other":{"b":{"c":1}}}';
    const found = cut(text);
    expect(found.ok && found.pieces.map(({ from, to }) => text.slice(from, to))).toEqual([
      '{"a":"}],[\\""}',
      '[2]',
    ]);
  });

  it('is read one piece in a step', () => {
    const pieces = Array.from({ length: 40 }, (_, at) => ({ id: at }));
    const bytes = Buffer.from(JSON.stringify({ answers: pieces }));
    const found = ended(cutJson(bytes, ROOM)).value;
    const reads: number[] = [];
    const whole = ended(
      readPieces(
        bytes,
        found.ok ? found.pieces : [],
        (text) => {
          reads.push(text.length);
          return JSON.parse(text);
        },
        MARK,
      ),
    );
    expect(whole.value).toEqual({ answers: pieces });
    expect(reads).toHaveLength(41);
    expect(whole.steps).toBe(42);
  });

  it.each([
    ['values', { values: 4 }, '{"answers":[{"a":1},2]}', '{"answers":[{"a":1},2,3]}'],
    ['inPiece', { inPiece: 3 }, '{"answers":[[1,2,3],[1,2,3]]}', '{"answers":[[1,2,3],[1,{"a":1,"b":2}]]}'],
    ['inPiece', { inPiece: 3 }, '{"a":[1,2]}', '{"a":1,"b":2,"c":{"d":{"e":1}}}'],
    ['deep', { deep: 4 }, '{"a":[[[]]]}', '{"a":[[[[]]]]}'],
  ])('has so many %s and no more', (what, bounds, fits, doesnt) => {
    expect(cut(fits, bounds)).toMatchObject({ ok: true });
    expect(cut(doesnt, bounds)).toEqual({
      ok: false,
      tooMany: what,
    });
  });

  it('is looked through in steps, however long a text in it is', () => {
    expect(ended(cutJson(Buffer.from(`["${'c'.repeat(640_000)}"]`), ROOM)).steps).toBeGreaterThanOrEqual(10);
  });
});
