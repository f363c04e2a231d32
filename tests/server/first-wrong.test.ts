/** What is wrong with something large is found without looking at all that is wrong with it. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { answerRecord } from '../../shared/practice.ts';
import { checkAnswer } from '../../src/server/check-answer.ts';
import { firstWrong } from '../../src/server/first-wrong.ts';
import { answerWith } from '../support/answers.ts';

function ended<T>(steps: Generator<undefined, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const wrongIn = (schema: z.ZodType, value: unknown) => ended(firstWrong(schema, value));
const good = answerWith({ id: 'a', at: 0 });

/** The good answer with something else at one of its places. */
function spoilt(place: number, by: unknown): unknown {
  const whole = structuredClone(good) as unknown as Record<string, unknown>;
  const places: (readonly [Record<string, unknown>, string])[] = [];
  const open: unknown[] = [whole];
  for (const one of open) {
    if (typeof one !== 'object' || one === null) continue;
    for (const [key, inner] of Object.entries(one)) {
      places.push([one as Record<string, unknown>, key]);
      open.push(inner);
    }
  }
  const [within, key] = places[place % places.length]!;
  within[key] = by;
  return whole;
}

describe('the first wrong piece', () => {
  it('is one that the schema finds too, and there is none where it finds none', () => {
    expect(wrongIn(answerRecord, good)).toBeNull();
    const other = fc.oneof(fc.jsonValue(), fc.constantFrom(undefined, [], {}, [{}], { kind: 'relay' }));
    const agrees = fc.property(fc.nat(), other, (place, by) => {
      const value = spoilt(place, by);
      const { error } = answerRecord.safeParse(value);
      const wrong = wrongIn(answerRecord, value);
      if (!error) expect(wrong).toBeNull();
      else if (wrong) {
        const paths = error.issues.map(({ path }) => path.join('.'));
        expect(paths).toContain(wrong.path.join('.'));
      }
    });
    expect(() => fc.assert(agrees, { numRuns: 500 })).not.toThrow();
  });

  it('is told with its place and the words of the schema', () => {
    const schema = z.strictObject({
      list: z.array(z.strictObject({ text: z.string() })).max(3),
      names: z.record(z.string().max(3), z.number()).optional(),
    });
    const told = (value: unknown) => {
      const wrong = wrongIn(schema, value);
      return wrong && [wrong.path.join('.'), wrong.message];
    };
    expect(told({ list: [{ text: 'a' }, { text: 1 }, {}] })).toEqual([
      'list.1.text',
      'Invalid input: expected string, received number',
    ]);
    expect(told({ list: [{ text: 'a', more: 1, evenMore: 2 }] })).toEqual([
      'list.0',
      'Unrecognized key: "more"',
    ]);
    expect(told({ list: [{}, {}, {}, {}] })).toEqual(['list', 'Too big: expected array to have <=3 items']);
    expect(told({ list: [], names: { long: 1 } })?.[0]).toBe('names.long');
    expect(told({ list: [], names: { a: 'x' } })?.[0]).toBe('names.a');
    expect(told([])?.[0]).toBe('');
    expect(told({ list: [], names: { a: 1 } })).toBeNull();
  });

  it('is where looking ends: what stands behind it in an answer is not looked at', () => {
    let looked = false;
    const behind = {
      get item(): string {
        looked = true;
        return '';
      },
      correct: true,
    };
    const value = { ...good, mark: { ...good.mark, parts: [{}, behind] } };
    const steps = checkAnswer(value, good.learner);
    // Its size is counted first, which reads everything.
    steps.next();
    looked = false;
    expect(ended(steps)).toMatchObject({
      ok: false,
      failure: { code: 'bad-answer', why: { form: { says: 'form.missing', at: 'mark.parts.0.item' } } },
    });
    expect(looked).toBe(false);
  });
});
