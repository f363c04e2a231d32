/** What the homework screens work out without a browser: answers in part, questions as sent, addresses, times, marks typed. */
import { english } from '../../src/words/en/core.ts';
import 'fake-indexeddb/auto';
import './support/words.ts';
import { describe, expect, it } from 'vitest';
import type { LearnerSet } from '../../shared/homework-views.ts';
import type { Answer } from '../../shared/question.ts';
import { blankAnswer, publicQuestion, rightAnswer } from '../../src/questions/index.ts';
import { KeptHomework } from '../../src/web/local/homework/kept-homework.ts';
import { Outbox } from '../../src/web/local/homework/outbox.ts';
import { answeredOf, answerSoFar, chosenOf } from '../../src/web/question/answer.ts';
import { addressOf, type HomeworkRoute, routeOf } from '../../src/web/screens/homework/homework-route.ts';
import { savingText } from '../../src/web/screens/homework/learner/keeping.tsx';
import { fieldText, leftOf, momentOf, usualTimes } from '../../src/web/screens/homework/moments.ts';
import { marksTyped } from '../../src/web/screens/homework/tutor/marks-typed.ts';
import { byPerson } from '../../src/web/screens/homework/tutor/refreshers-by-person.ts';
import { freshDraft, wishOf } from '../../src/web/screens/homework/tutor/set-draft.ts';
import { openText } from '../../src/web/tell-homework.ts';
import { left } from '../../src/words/en/page/homework/common.ts';
import { everyKind } from '../browser/support/every-kind.ts';
import { markAnswer } from '../support/in-english.ts';

const questions = [...everyKind()].map(([name, { question }]) => [name, question] as const);

describe.each(questions)('a question in homework: %s', (_, question) => {
  const sent = publicQuestion(english, question);

  it('can be answered rightly from what was sent before it is answered', () => {
    const right = rightAnswer(question);
    const chosen = chosenOf(sent.asked, right);
    expect(answeredOf(sent.asked, chosen)).toBe('all');
    const answer = answerSoFar(sent.kind, sent.asked, chosen);
    expect(answer).toEqual(right);
    expect(markAnswer(question, answer).correct).toBe(true);
  });

  it('is blank before anything is chosen, and in part after the first of several things', () => {
    expect(answerSoFar(sent.kind, sent.asked, new Map())).toEqual(blankAnswer(question));
    expect(answeredOf(sent.asked, new Map())).toBe('none');
    const [first, ...others] = sent.asked.items;
    if (!first || first.choices.length === 0) return;
    const chosen = new Map([[first.item, first.values[0] ?? '']]);
    expect(answeredOf(sent.asked, chosen)).toBe(others.length > 0 ? 'part' : 'all');
    const mark = markAnswer(question, answerSoFar(sent.kind, sent.asked, chosen));
    expect(mark.problems).toEqual([]);
    expect(mark.parts.filter((part) => part.given !== undefined)).toHaveLength(1);
  });
});

describe('a meter that shows nothing', () => {
  it('is an answer, and a half-typed number is none', () => {
    const [, meter] = questions.find(([, { kind }]) => kind === 'meter') ?? [];
    if (!meter) throw new Error('no meter question was found');
    const { asked } = publicQuestion(english, meter);
    const answer = (text: string): Answer => answerSoFar(meter.kind, asked, new Map([['volts', text]]));
    expect(answer('nothing')).toEqual({ kind: 'meter', volts: null });
    expect(answer('-')).toEqual({ kind: 'meter' });
    expect(answer('24,5 V')).toEqual({ kind: 'meter', volts: 24.5 });
  });
});

describe('addresses', () => {
  it.each<HomeworkRoute>([
    { at: 'mine' },
    { at: 'paper', paper: 'p_1-x', item: null },
    { at: 'paper', paper: 'p', item: 3 },
    { at: 'review', paper: 'p', item: 12 },
    { at: 'sets', class: null },
    { at: 'sets', class: 'c' },
    { at: 'new', class: 'c' },
    { at: 'change', set: 's' },
    { at: 'set', set: 's' },
    { at: 'sample', set: 's', number: 7 },
    { at: 'report', report: 'report', of: 's' },
    { at: 'typed', set: 's' },
    { at: 'marked', set: 's', paper: 'p', item: null },
    { at: 'marked', set: 's', paper: 'p', item: 2 },
    { at: 'report', report: 'term', of: 'c' },
    { at: 'report', report: 'competence', of: 'c' },
    // One that is to come.
    { at: 'report', report: 'head-count', of: 'c' },
  ])('lead where they came from: %j', (where) => {
    expect(routeOf(addressOf(where).split('/')[2])).toEqual(where);
  });

  it('that mean nothing lead to the beginning', () => {
    for (const text of ['', 'paper', 'marked.s', 'report.', 'nowhere', 'sample'])
      expect(routeOf(text)).toEqual({ at: 'sets', class: null });
    expect(routeOf('paper.p.zero')).toEqual({ at: 'paper', paper: 'p', item: null });
  });
});

describe('times', () => {
  it('go into a field and come back to the minute', () => {
    const at = new Date(2026, 9, 26, 2, 30).getTime();
    expect(momentOf(fieldText(at))).toBe(at);
    expect(momentOf('')).toBeUndefined();
  });

  it('are by default from now until eight in the evening a week later', () => {
    const now = new Date(2026, 10, 25, 14, 20, 33).getTime();
    const { opensAt, closesAt } = usualTimes(now);
    expect(fieldText(opensAt)).toBe('2026-11-25T14:20');
    expect(fieldText(closesAt)).toBe('2026-12-02T20:00');
  });

  it('that are left are never said to be more than they are', () => {
    const MINUTE = 60_000;
    const leftText = (milliseconds: number): string => left(leftOf(milliseconds));
    expect(leftText(0)).toBe('none');
    expect(leftText(MINUTE - 1)).toBe('less than a minute');
    expect(leftText(MINUTE)).toBe('1 minute');
    expect(leftText(119 * MINUTE)).toBe('119 minutes');
    expect(leftText(120 * MINUTE)).toBe('2 hours');
    expect(leftText(48 * 60 * MINUTE - 1)).toBe('47 hours');
    expect(leftText(71 * 60 * MINUTE)).toBe('2 days');
  });
});

describe('the line that tells of homework', () => {
  const set = (changes: Partial<LearnerSet>): LearnerSet => ({
    id: 'w1',
    title: 'Week 1',
    classTitle: 'Packers',
    opensAt: 0,
    closesAt: new Date(2026, 10, 27, 20, 0).getTime(),
    items: 5,
    outOf: 5,
    help: 'none',
    review: 'after-closing',
    attemptsAllowed: 2,
    state: 'open',
    attempts: [],
    mayBegin: true,
    ...changes,
  });
  const attempt = (submittedAt: number | null): LearnerSet['attempts'][number] => ({
    paper: 'p',
    attempt: 1,
    begunAt: 1,
    submittedAt,
    mayReview: false,
    total: null,
  });

  it('names the most urgent one that is to be handed in, until when, and how many there are besides', () => {
    const sets = [
      set({ title: 'Handed in', attempts: [attempt(5)] }),
      set({}),
      set({ title: 'Begun', attempts: [attempt(null)] }),
      set({ title: 'Coming', state: 'before' }),
    ];
    expect(openText(sets)).toMatch(/^Homework is open: “Week 1” until .*20:00.*, and 1 more$/);
    expect(openText(sets.slice(2))).toMatch(/^Homework is open: “Begun” until .*20:00[^,]*$/);
  });

  it('is empty where nothing is open, or all of it is handed in', () => {
    const others = [set({ state: 'before' }), set({ state: 'closed' }), set({ attempts: [attempt(5)] })];
    expect(openText(others)).toBe('');
  });
});

describe('what is said of saving', () => {
  async function outbox(
    waiting: number,
    standing: Outbox['standing']['value'],
    refused = 0,
  ): Promise<Outbox> {
    const made = new Outbox(await KeptHomework.open('words'), 'fern', async () => ({ kind: 'later' }));
    made.waiting.value = waiting;
    made.standing.value = standing;
    made.refused.value = new Map(refused > 0 ? [['p', refused]] : []);
    return made;
  }

  it('is never "Saved." of a paper of which an answer came too late, and is of the others', async () => {
    expect(savingText(await outbox(0, 'done'), 'p')).toBe('Saved.');
    expect(savingText(await outbox(0, 'done', 1), 'p')).toBe(
      '1 answer was not saved: the overview says why.',
    );
    expect(savingText(await outbox(0, 'done', 3), 'p')).toBe(
      '3 answers were not saved: the overview says why.',
    );
    expect(savingText(await outbox(0, 'done', 3), 'another')).toBe('Saved.');
  });

  it('is what waits, as long as something waits, and nothing before anything is known', async () => {
    expect(savingText(await outbox(2, 'later', 1), 'p')).toBe(
      '2 answers kept on this device, waiting for the network.',
    );
    expect(savingText(await outbox(1, 'signed-out'))).toBe(
      '1 answer kept on this device. Sign in again to send them.',
    );
    expect(savingText(await outbox(1, 'sending'))).toBe('Saving…');
    expect(savingText(await outbox(0, 'unknown'))).toBe('');
  });
});

describe('a new set', () => {
  const fresh = freshDraft(new Date(2026, 10, 25, 14, 20).getTime());

  it('says what is missing, one thing at a time, and becomes a wish when nothing is', () => {
    expect(wishOf(fresh)).toEqual({ problem: 'Give the set a title.' });
    const titled = { ...fresh, title: ' Week 1 ' };
    expect(wishOf(titled)).toEqual({ problem: 'Choose at least one skill.' });
    const whole = { ...titled, skills: ['make-contact'] };
    expect(wishOf({ ...whole, closesAt: '' })).toHaveProperty('problem');
    expect(wishOf({ ...whole, closesAt: whole.opensAt })).toHaveProperty('problem');
    expect(wishOf(whole)).toMatchObject({
      title: 'Week 1',
      skills: ['make-contact'],
      items: 10,
      attempts: 1,
      review: 'after-closing',
    });
  });
});

describe('marks typed from paper', () => {
  const places = [{ marks: 2 }, { marks: 1 }, { marks: 10 }];

  it('are read with a comma or a point, and nothing is left out', () => {
    expect(marksTyped(['1,5', '', '10'], places)).toEqual({ marks: [1.5, null, 10] });
    expect(marksTyped([' 0 ', '1', '.25'], places)).toEqual({ marks: [0, 1, 0.25] });
  });

  it('that are more than an item has, or no number, are told with the place', () => {
    expect(marksTyped(['2', '2', ''], places)).toMatchObject({ at: 1 });
    expect(marksTyped(['two', '', ''], places)).toMatchObject({ at: 0 });
    expect(marksTyped(['', '', '-1'], places)).toMatchObject({ at: 2 });
    expect(marksTyped(['1.234', '', ''], places)).toMatchObject({ at: 0 });
  });
});

describe('refreshers that are due', () => {
  const due = (person: string, skill: string, dueAt: number) => ({ person, skill, dueAt });

  it('stand under the person whose they are, who has to begin first being first', () => {
    const [late, ripe, soon, then] = [
      due('b', 'x', 10),
      due('b', 'y', 20),
      due('a', 'x', 30),
      due('b', 'z', 40),
    ];
    expect(byPerson([then, soon, ripe, late], 20)).toEqual([
      { person: 'b', due: [late, ripe, then], overdue: 2 },
      { person: 'a', due: [soon], overdue: 0 },
    ]);
    expect(byPerson([], 20)).toEqual([]);
  });
});
