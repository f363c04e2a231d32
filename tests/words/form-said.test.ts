/** What a schema finds wrong is told by the catalogue, whatever the library that looks would say of it. */
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { formName } from '../../shared/form-name.ts';
import { forms } from '../../src/words/en/forms.ts';
import { formSaid } from '../../src/words/form-said.ts';
import { say } from '../../src/words/statement.ts';

const schema = z.strictObject({
  text: z.string().min(2).max(4),
  count: z.int().positive().max(60),
  share: z.number().min(0).multipleOf(0.01),
  level: z.enum(['small', 'large']),
  list: z.array(z.boolean()).min(1).max(2),
  skill: z.string().regex(/^[a-z]+$/, formName('form.skill')),
  plain: z.string().regex(/^[a-z]+$/),
  either: z.union([z.strictObject({ a: z.null() }), z.strictObject({ b: z.null() })]),
  names: z.record(z.string().max(3), z.number()),
  even: z.number().refine((value) => value % 2 === 0),
});
const good = {
  text: 'abc',
  count: 3,
  share: 0.25,
  level: 'small',
  list: [true],
  skill: 'a',
  plain: 'a',
  either: { a: null },
  names: { a: 1 },
  even: 2,
};

function told(value: unknown): string {
  const { error } = schema.safeParse(value);
  return error ? say(forms, formSaid(error.issues[0]!, value)) : '';
}

describe('the form of a value', () => {
  it('is right where nothing is told', () => {
    expect(told(good)).toBe('');
  });

  it.each([
    [{ text: undefined }, 'At text: nothing stands here, and something has to.'],
    [{ text: 3 }, 'At text: this has to be a string.'],
    [{ text: null }, 'At text: this has to be a string.'],
    [{ text: 'a' }, 'At text: this text has to have at least 2 characters.'],
    [{ text: 'abcde' }, 'At text: this text has to have at most 4 characters.'],
    [{ count: 0 }, 'At count: this has to be more than 0.'],
    [{ count: 61 }, 'At count: this has to be at most 60.'],
    [{ count: 1.5 }, 'At count: this has to be a whole number.'],
    [{ share: -1 }, 'At share: this has to be at least 0.'],
    [{ share: 0.005 }, 'At share: this has to be a multiple of 0.01.'],
    [{ level: 'huge' }, 'At level: this has to be small or large.'],
    [{ list: {} }, 'At list: this has to be an array.'],
    [{ list: [] }, 'At list: this list has to have at least 1 entries.'],
    [{ list: [true, true, true] }, 'At list: this list has to have at most 2 entries.'],
    [{ list: [true, 1] }, 'At list.1: this has to be true or false.'],
    [{ skill: 'A' }, 'At skill: a skill name such as changeover-two-poles.'],
    [{ plain: 'A' }, 'At plain: this has another form than it has to have.'],
    [{ either: { c: 1 } }, 'At either: this has another form than it has to have.'],
    [{ names: { long: 1 } }, 'At names.long: this has another form than it has to have.'],
    [{ even: 1 }, 'At even: this has another form than it has to have.'],
    [{ one: 1, two: 2 }, 'At the top: there is no field "one" and "two" here.'],
  ])('%j is told as what it has to be', (change, sentence) => {
    expect(told({ ...good, ...change })).toBe(sentence);
  });

  it('is told of the whole value too', () => {
    expect(told([])).toBe('At the top: this has to be an object.');
    expect(told(undefined)).toBe('At the top: nothing stands here, and something has to.');
  });
});
