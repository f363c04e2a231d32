import { describe, expect, it } from 'vitest';
import type { IssuedQuestion } from '../../shared/issued.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Answer, Question } from '../../shared/question.ts';
import { newRecall } from '../../src/memory/index.ts';
import {
  bothLeft,
  courseOf,
  type IdeasLeft,
  ideasTold,
  judge,
  nextTask,
  questionIssued,
} from '../../src/practice/index.ts';
import { firstOf } from '../../src/practice/telling-apart.ts';
import { answeredApart, rightAnswer } from '../../src/questions/index.ts';
import { ownBank } from '../support/own-bank.ts';
import { BOTH, breaks, lampsAnswered, legs, legsAllLit } from '../support/two-ideas.ts';

const read = courseOf(ownBank());
if (!read.ok) throw new Error('the bank is wrong');
const course = {
  ...read.value,
  bank: { topics: read.value.bank.topics.map((topic) => ({ ...topic, questions: [] })) },
} as typeof read.value;

const request = (seed: string, skill: string, left?: IdeasLeft) => ({
  course,
  recalls: new Map([[skill, newRecall()]]),
  at: Date.UTC(2026, 4, 4, 8),
  seed,
  number: 3,
  recent: [],
  seen: new Set<string>(),
  only: skill,
  ...(left ? { ideasLeft: (asked: string) => (asked === skill ? left : undefined) } : {}),
});
const taskOf = (...wanted: Parameters<typeof request>) => {
  const next = nextTask(request(...wanted));
  if (!next.ok) throw new Error(next.reason);
  return next.task;
};

const SKILL = 'changeover-legs';
const LEFT: IdeasLeft = ['nothing-moves', 'normal-is-running'];
const seeds = Array.from({ length: 12 }, (_, index) => `apart ${index}`);
const apart = ({ question }: ReturnType<typeof taskOf>): boolean => answeredApart(question, ...LEFT);

describe('the next circuit where two ideas are left', () => {
  it('is one on which they differ', () => {
    const plain = seeds.filter((seed) => apart(taskOf(seed, SKILL)));
    expect(plain.length).toBeLessThan(seeds.length);
    expect(seeds.filter((seed) => apart(taskOf(seed, SKILL, LEFT)))).toEqual(seeds);
  });

  it('is the same for the same seed, and the one that comes anyway where that one will do', () => {
    for (const seed of seeds.slice(0, 4)) {
      const task = taskOf(seed, SKILL, LEFT);
      expect(taskOf(seed, SKILL, LEFT)).toEqual(task);
      const plain = taskOf(seed, SKILL);
      if (apart(plain)) expect(task).toEqual(plain);
    }
  });

  it('is any where none of a few will do, and no more are made than are looked at', () => {
    const plain = taskOf('any', SKILL);
    // Two names of one idea never differ.
    expect(taskOf('any', SKILL, ['nothing-moves', 'nothing-moves'])).toEqual(plain);
    let made = 0;
    const candidates = function* () {
      for (;;) {
        made++;
        yield plain;
      }
    };
    expect(firstOf(candidates(), ['nothing-moves', 'nothing-moves'])).toBe(plain);
    expect(made).toBe(20);
    expect(firstOf(candidates())).toBe(plain);
    expect(made).toBe(21);
    expect(firstOf([])).toBeUndefined();
  });

  it('is chosen among the questions that were issued, where some were', () => {
    const { recipes } = course.skills.get(SKILL)!;
    const issued = Array.from(
      { length: 8 },
      (_, index): IssuedQuestion => ({
        id: `issued0000000000000${String(index).padStart(2, '0')}`,
        skill: SKILL,
        reviews: 0,
        issuedAt: 1,
        until: 2,
      }),
    );
    const firstApart = (left: IdeasLeft): IssuedQuestion | undefined =>
      issued.find((issue) => {
        const made = questionIssued(recipes, issue, new Set());
        return made && answeredApart(made.question, ...left);
      });
    // Two ideas that the question issued first doesn't tell apart, and a later one does.
    const known = [
      'nothing-moves',
      'normal-is-running',
      'first-pole-only',
      'contacts-beside-coil',
      'break-never-opens',
      'make-for-break',
      'open-contact-followed',
      'both-legs-closed',
    ];
    const pairs = known.flatMap((one, at) => known.slice(at + 1).map((other): IdeasLeft => [one, other]));
    const ideas = pairs.find((pair) => ![issued[0], undefined].includes(firstApart(pair)))!;
    const first = firstApart(ideas);
    expect(first).not.toBe(issued[0]);
    const put = (left?: IdeasLeft) => {
      const next = nextTask({ ...request('issued', SKILL, left), issued });
      return next.ok ? next.task.issued : undefined;
    };
    expect(put()).toBe(issued[0]!.id);
    expect(put(ideas)).toBe(first!.id);
    expect(put(['nothing-moves', 'nothing-moves'])).toBe(issued[0]!.id);
  });
});

it('two ideas are left where two are told', () => {
  expect(bothLeft([])).toBeUndefined();
  expect(bothLeft(['nothing-moves'])).toBeUndefined();
  expect(bothLeft(LEFT)).toEqual(LEFT);
});

describe('the ideas told with the latest answer', () => {
  const record = (skill: string, question: Question, answer: Answer): AnswerRecord => {
    const task = { skill, why: 'due', question, circuit: 'c'.repeat(32), secondsExpected: 30 } as const;
    const help = { hint: false, explanation: false };
    return judge(task, { id: 'a', learner: 'me', at: 1, answer, help, secondsUsed: 20 }, new Map()).record;
  };
  const before = record(SKILL, breaks, lampsAnswered('lit', 'lit', 'lit'));
  const last = record(SKILL, legs, legsAllLit);

  it('go by those before it of the same skill', () => {
    expect(ideasTold([last])).toEqual(BOTH);
    expect(ideasTold([before, last])).toEqual(['break-never-opens']);
    expect(ideasTold([{ ...before, skill: 'off-delay' }, last])).toEqual(BOTH);
  });

  it('are none after a right answer, and before any', () => {
    expect(ideasTold([last, record(SKILL, legs, rightAnswer(legs))])).toEqual([]);
    expect(ideasTold([])).toEqual([]);
  });
});
