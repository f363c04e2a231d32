/** What every kind of question keeps, over fresh questions of every family. */

import { describe, expect, it } from 'vitest';
import {
  asked as askedSchema,
  mark as markSchema,
  publicQuestion as publicSchema,
  type Question,
  type QuestionKind,
  questionKind,
  question as questionSchema,
  type ToldExplanation,
  type ToldStep,
  toldMark,
} from '../../shared/question.ts';
import { MISCONCEPTIONS } from '../../src/misconceptions/index.ts';
import * as core from '../../src/questions/index.ts';
import {
  blankAnswer,
  checkQuestion,
  KINDS,
  publicQuestion,
  rightAnswer,
  secondsExpected,
  shareOf,
} from '../../src/questions/index.ts';
import { kindOf } from '../../src/questions/registry.ts';
import { MUCH_LIKELIER, oddsOfIdea } from '../../src/questions/slip-or-idea.ts';
import { rightSolver, wrongSolve } from '../../src/questions/solving.ts';
import { english } from '../../src/words/en/core.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { forEachTest } from '../support/for-each-test.ts';
import { askQuestion, hintFor, markAnswer, readAnswer } from '../support/in-english.ts';
import { freshQuestions } from './fresh.ts';
import { withOneWrongPart } from './wrong-answers.ts';

/** A few of each where each change is met by them. */
const COUNT = Math.max(2, drawn(20));
/** Drafts tried for each question: inputs are on few families' circuits, and live beside dead terminals of one look on few of all. */
const TRIES = 60;
/** Few families carry controller inputs. */
const FEWEST: Readonly<Record<QuestionKind, number>> = {
  'lamp-states': COUNT,
  'input-states': 8,
  'relay-states': COUNT,
  wiring: COUNT,
  meter: COUNT,
  sequence: COUNT,
  'still-live': 12,
};

const namesIn = ({ circuit }: Question): ReadonlySet<string> =>
  new Set([...circuit.devices.map(({ name }) => name), ...circuit.supplies.map(({ name }) => name)]);

const jsonCopy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** Every line of an explanation. */
const linesOf = ({ decides, story }: ToldExplanation): ToldStep[] => [
  ...decides.flatMap((decision) => [decision, ...decision.behind]),
  ...story,
];

/** What its explanation must name. */
function subjects(question: Question): string[] {
  if (question.kind === 'sequence') return question.asked.map(({ item }) => item);
  if (question.kind === 'meter') return [...question.points];
  if (question.kind === 'wiring') return [...question.choices.flat(), question.wanted[0]!.load];
  return [...question.asked];
}

it('has a kind for every kind of the contract', () => {
  expect(Object.keys(KINDS).sort()).toEqual([...questionKind.options].sort());
  for (const kind of questionKind.options) expect(KINDS[kind].kind).toBe(kind);
});

describe.each(questionKind.options)('a %s question', (kind) => {
  const questions = forEachTest(() => freshQuestions(kind, COUNT, TRIES * COUNT));
  const each = (test: (question: Question, about: string) => void): void => {
    for (const question of questions()) test(question, `${question.family}, seed "${question.seed}"`);
  };

  it('is found in many families', () => {
    expect(questions().length).toBeGreaterThanOrEqual(Math.max(1, atLeast(FEWEST[kind])));
  });

  it('has nothing wrong with it, and one right answer', () => {
    each((question, about) => {
      expect(checkQuestion(question), about).toEqual([]);
      expect(questionSchema.parse(question), about).toEqual(question);
    });
  });

  it('comes through JSON unchanged, and so does all that is said of it', () => {
    each((question, about) => {
      const again = questionSchema.parse(jsonCopy(question));
      expect(rightAnswer(again), about).toEqual(rightAnswer(question));
      const asked = askQuestion(question);
      expect(askedSchema.parse(jsonCopy(asked)), about).toEqual(asked);
      const shown = publicQuestion(english, question);
      expect(publicSchema.parse(jsonCopy(shown)), about).toEqual(shown);
      expect(JSON.stringify(shown), about).not.toContain(question.seed);
    });
  });

  it('gives the right answer all marks, and no wrong idea', () => {
    each((question, about) => {
      const mark = markAnswer(question, rightAnswer(question));
      expect(toldMark.parse(jsonCopy(mark)), about).toEqual(mark);
      const kept = core.markAnswer(question, rightAnswer(question)).mark;
      expect(markSchema.parse(jsonCopy(kept)), about).toEqual(kept);
      expect(mark, about).toMatchObject({ share: 1, correct: true, misconceptions: [], problems: [] });
      expect(
        mark.parts.map(({ item }) => item),
        about,
      ).toEqual(askQuestion(question).items.map(({ item }) => item));
    });
  });

  it('takes marks away for every single wrong part', () => {
    each((question, about) => {
      const wrong = withOneWrongPart(question);
      expect(wrong.length, about).toBeGreaterThan(0);
      const right = rightAnswer(question);
      for (const [index, answer] of wrong.entries()) {
        const told = `${about}: ${JSON.stringify(answer)}`;
        const { parts } = kindOf(question.kind).parts(question, answer, right);
        expect(parts.filter(({ correct }) => !correct).length, told).toBe(1);
        expect(shareOf(parts), told).toBeLessThan(1);
        // The whole mark says the same; it costs an explanation and every misconception, so not for all.
        if (index > 0) continue;
        const mark = markAnswer(question, answer);
        expect(mark, told).toMatchObject({ correct: false, share: shareOf(parts) });
      }
    });
  });

  it('gives nothing for a blank', () => {
    each((question, about) => {
      const mark = markAnswer(question, blankAnswer(question));
      expect(mark, about).toMatchObject({ share: 0, correct: false, misconceptions: [] });
      expect(
        mark.parts.every(({ given }) => given === undefined),
        about,
      ).toBe(true);
    });
  });

  it('names every misconception that gives the answer, where the answer is wrong', () => {
    let told = 0;
    each((question, about) => {
      const solver = rightSolver();
      for (const misconception of MISCONCEPTIONS) {
        const answer = kindOf(question.kind).answerBy(question, wrongSolve(misconception, solver));
        if (!answer) continue;
        const mark = markAnswer(question, answer);
        const ids = core.markAnswer(question, answer).mark.misconceptions;
        const { parts } = kindOf(question.kind).parts(question, answer, rightAnswer(question));
        // One wrong part among several is a slip as likely as not.
        const speaks = !mark.correct && oddsOfIdea(parts) >= MUCH_LIKELIER;
        if (speaks) expect(ids, `${about}: ${misconception.id}`).toContain(misconception.id);
        else expect(ids, `${about}: ${misconception.id}`).toEqual([]);
        if (speaks) told++;
      }
    });
    expect(told).toBeGreaterThan(atLeast(questions().length / 10));
  });

  it('explains with devices of the circuit only, and names everything asked', () => {
    each((question, about) => {
      const names = namesIn(question);
      const { explanation } = markAnswer(question, blankAnswer(question));
      const steps = linesOf(explanation);
      expect(steps.length, about).toBeGreaterThan(0);
      const whole = steps.map(({ text }) => text).join('\n');
      const mentioned = whole.match(/(?<![A-Za-z0-9+])-[A-Z]{1,3}[0-9]{1,4}\b/g) ?? [];
      for (const name of mentioned) expect(names.has(name), `${about}: ${name} in ${whole}`).toBe(true);
      for (const thing of steps.flatMap((step) => step.about))
        expect(names.has(thing.split(':')[0]!), `${about}: ${thing}`).toBe(true);
      for (const subject of subjects(question)) expect(whole, about).toContain(subject);
      for (const { text } of steps) expect(text, about).toMatch(/^(?:[-A-Z0-9]).*[.:]$/s);
    });
  });

  it('tells nothing twice, and reasons again only with something new among them', () => {
    each((question, about) => {
      const { decides } = markAnswer(question, blankAnswer(question)).explanation;
      const lines = decides.flatMap(({ text, behind }) => [text, ...behind.map((step) => step.text)]);
      const heads = new Set(decides.map(({ text }) => text));
      expect(heads.size, about).toBe(decides.length);
      // What a wiring has to do is told of one thing after the other, each with its reasons.
      const isHead = (line: string): boolean => heads.has(line) || /^[1-9][0-9]*\. /.test(line);
      const latest = new Map<string, string>();
      let at = 0;
      while (at < lines.length) {
        const next = lines.findIndex((line, index) => index > at && isHead(line));
        const told = lines.slice(at, next < 0 ? undefined : next);
        expect(new Set(told).size, `${about}\n${told.join('\n')}`).toBe(told.length);
        const reasons = told.slice(1).map((line) => [/^(\S+) /.exec(line)![1]!, line] as const);
        const news = reasons.filter(([of, line]) => latest.get(of) !== line);
        expect(reasons.length > 0 && news.length === 0, `${about}\n${lines.join('\n')}`).toBe(false);
        for (const [of, line] of news) latest.set(of, line);
        at += told.length;
      }
    });
  });

  it('tells of each part shortly that was answered rightly', () => {
    each((question, about) => {
      const whole = markAnswer(question, blankAnswer(question)).explanation;
      const short = markAnswer(question, rightAnswer(question)).explanation;
      expect(short.decides.map(({ item }) => item)).toEqual(whole.decides.map(({ item }) => item));
      short.decides.forEach(({ text, behind }, index) => {
        expect(behind, about).toEqual([]);
        expect(text.length, about).toBeLessThanOrEqual(whole.decides[index]!.text.length);
      });
      expect(short.story).toEqual(whole.story);
    });
  });

  it('hints without telling the answer, and expects a sensible time', () => {
    each((question, about) => {
      const hint = hintFor(question);
      expect(hint.length, about).toBeGreaterThan(20);
      if (kind !== 'wiring') expect(hint, about).not.toMatch(/\b(?:lit|dark|operated|at rest|reads?|dead)\b/);
      expect(secondsExpected(question), about).toBeGreaterThanOrEqual(10);
    });
  });

  it('reads its right answer back when it is typed', () => {
    each((question, about) => {
      const right = rightAnswer(question);
      for (const text of typed(question)) {
        const read = readAnswer(question, text);
        expect(read, `${about}: ${text}`).toMatchObject({ ok: true });
        if (read.ok) expect(markAnswer(question, read.value).share, `${about}: ${text}`).toBe(1);
      }
      expect(right.kind).toBe(kind);
    });
  });
});

/** Ways to type the right answer. */
function typed(question: Question): string[] {
  const right = rightAnswer(question);
  const { items } = askQuestion(question);
  switch (right.kind) {
    case 'meter':
      return right.volts === null || right.volts === undefined
        ? ['nothing', 'none']
        : [`${right.volts}`, `${right.volts} V`, `${String(right.volts).replace('.', ',')}v`];
    case 'wiring': {
      const choice = right.choice ?? 0;
      return [`${choice + 1}`, 'abcdefgh'[choice]!, items[0]!.choices[choice]!];
    }
    case 'sequence': {
      const steps = items.map(({ item }) => {
        const [after, name] = item.split(' ');
        return `after ${after}: ${name} ${right.states[item]}`;
      });
      return [steps.join('; '), items.map(({ item }) => right.states[item]).join(' ')];
    }
    default: {
      const pairs = items.map(({ item }) => `${item} ${right.states[item]}`);
      const first = items[0]!.choices[0]!;
      const list = items.filter(({ item }) => right.states[item] === first).map(({ item }) => item.slice(1));
      const plain = items.every(({ item, choices }) => choices.indexOf(right.states[item]!) < 2);
      return [
        pairs.join(', '),
        pairs.join(' ').toLowerCase(),
        items.map(({ item }) => right.states[item]).join(' '),
        ...(plain && list.length > 0 ? [`${first}: ${list.join(' ')}`, list.join(' and ')] : []),
        ...(plain && list.length === 0 ? ['none', `none ${first}`] : []),
      ];
    }
  }
}
