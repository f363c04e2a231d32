/**
 * Statements against the Experience API 1.0.3 (ADL, 2016, part two: data; from memory): the properties a statement must
 * have, those it may have, and the form of each. Verbs and activity types are those of the ADL vocabulary.
 */

import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { isoDuration, overrideMark, xapiStatements } from '../../src/homework/index.ts';
import { english } from '../../src/words/en/core.ts';
import { believing, rightly, work } from '../homework/class-work.ts';
import { CLOSES, places, setOf } from '../homework/course.ts';

const iri = z.string().regex(/^[a-z][a-z0-9+.-]*:\/\/[^\s<>"{}|\\^`]+$/);
const languageMap = z.record(z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]+)*$/), z.string());
const extensions = z.record(iri, z.unknown());
const activity = z.strictObject({
  objectType: z.literal('Activity'),
  id: iri,
  definition: z.strictObject({ type: iri, name: languageMap }),
});
/** Of the identifiers of an agent exactly one: here the account. */
const statement = z.strictObject({
  id: z.uuid(),
  actor: z.strictObject({
    objectType: z.literal('Agent'),
    account: z.strictObject({ homePage: iri, name: z.string().min(1) }),
  }),
  verb: z.strictObject({ id: iri, display: languageMap }),
  object: activity,
  result: z.strictObject({
    score: z
      .strictObject({
        scaled: z.number().min(-1).max(1),
        raw: z.number(),
        min: z.number(),
        max: z.number(),
      })
      .refine(({ raw, min, max }) => min < max && raw >= min && raw <= max),
    success: z.boolean().optional(),
    completion: z.boolean().optional(),
    response: z.string().optional(),
    duration: z
      .string()
      .regex(/^PT(?=\d)(\d+H)?(\d+M)?(\d+(\.\d{1,2})?S)?$/)
      .optional(),
    extensions: extensions.optional(),
  }),
  context: z.strictObject({
    contextActivities: z.strictObject({ parent: z.array(activity).min(1) }).optional(),
    extensions,
  }),
  timestamp: z.iso.datetime(),
});

const set = setOf(places(['make-contact', 'status-lamps'], 6));
const { marks } = work(set, [
  rightly,
  believing('make-for-break'),
  (question, item) => (item < 2 ? rightly(question, item) : undefined),
]);

const sent = (index: number) =>
  xapiStatements({
    words: english,
    set,
    mark: marks[index]!,
    base: 'https://class.example/homework',
    account: { homePage: 'https://class.example', name: 'p-7f3a' },
    at: CLOSES,
    uuidFor: (what) => `00000000-0000-4000-8000-${String(what === 'paper' ? 999 : what).padStart(12, '0')}`,
  });

describe('xAPI statements', () => {
  it('have every property that 1.0.3 asks for, in its form, and no other', () => {
    for (const index of marks.keys())
      for (const each of sent(index)) expect(statement.safeParse(each).error?.issues).toBeUndefined();
  });

  it('have the right verbs and types, and set no version of their own', () => {
    const statements = sent(0);
    expect(statements.map(({ verb }) => verb.id)).toEqual([
      ...set.places.map(() => 'http://adlnet.gov/expapi/verbs/answered'),
      'http://adlnet.gov/expapi/verbs/completed',
    ]);
    expect(statements[0]!.object.definition.type).toBe('http://adlnet.gov/expapi/activities/cmi.interaction');
    expect(statements.at(-1)!.object.definition.type).toBe('http://adlnet.gov/expapi/activities/assessment');
    for (const each of statements) expect(each).not.toHaveProperty('version');
  });

  it('name the learner by the pseudonym alone', () => {
    const text = JSON.stringify(sent(0));
    expect(text).toContain('p-7f3a');
    expect(text).not.toContain(marks[0]!.learner);
  });

  it('have an id each, the same whenever they are made', () => {
    const ids = sent(0).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(sent(0)).toEqual(sent(0));
  });

  it('give the whole paper the share of its marks, and each item its own', () => {
    expect(sent(0).at(-1)!.result.score).toEqual({ scaled: 1, raw: 12, min: 0, max: 12 });
    expect(sent(2).at(-1)!.result.score).toEqual({ scaled: 4 / 12, raw: 4, min: 0, max: 12 });
  });

  it('say nothing of items that were left out', () => {
    expect(sent(2)).toHaveLength(3);
  });

  it('say which wrong idea alone explains an answer', () => {
    const ideas = sent(1).flatMap(
      ({ result }) => result.extensions?.['https://class.example/homework/extensions/misconceptions'] ?? [],
    );
    const own = marks[1]!.items.flatMap(({ mark }) => mark.misconceptions);
    expect(ideas).toEqual(own);
  });

  it('give the marks that a tutor has given', () => {
    const changed = overrideMark(marks[2]!, 5, { earned: 2, reason: 'Shown.', by: 't', at: CLOSES });
    if (!changed.ok) throw new Error('refused');
    const last = xapiStatements({
      words: english,
      set,
      mark: changed.value,
      base: 'https://class.example/homework',
      account: { homePage: 'https://class.example', name: 'p' },
      at: CLOSES,
      uuidFor: () => '00000000-0000-4000-8000-000000000000',
    }).at(-1)!;
    expect(last.result.score.raw).toBe(6);
  });
});

describe('ISO 8601 durations', () => {
  it.each([
    [0, 'PT0S'],
    [0.5, 'PT0.5S'],
    [59.999, 'PT1M'],
    [90, 'PT1M30S'],
    [3600, 'PT1H'],
    [3661.25, 'PT1H1M1.25S'],
    [100_000, 'PT27H46M40S'],
  ])('are right for %d seconds', (seconds, text) => {
    expect(isoDuration(seconds)).toBe(text);
  });
});
