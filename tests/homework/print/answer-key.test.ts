import { describe, expect, it } from 'vitest';
import type { Paper } from '../../../shared/homework.ts';
import type { Answer } from '../../../shared/question.ts';
import { codeInGroups, countedAnswers, earnedOf, markPaper, totalOf } from '../../../src/homework/index.ts';
import { answerKeyPdf, classPapersPdf, keyOf } from '../../../src/homework/print/index.ts';
import { rightAnswer } from '../../../src/questions/index.ts';
import { english } from '../../../src/words/en/core.ts';
import { askQuestion, readAnswer } from '../../support/in-english.ts';
import { className, made, papers, set } from './class-to-print.ts';
import { readPdf, together } from './read-pdf.ts';

const marked = (paper: Paper, answers: readonly Answer[]) =>
  markPaper(
    paper,
    countedAnswers(
      set,
      answers.map((answer, item) => ({ item, answer, at: set.opensAt, secondsUsed: null, hint: false })),
    ),
  );

describe('the answer key', () => {
  it('gives answers that earn full marks when they are typed in', () => {
    for (const { paper } of papers) {
      const answers = keyOf(english, paper).map(({ answer }, index) => {
        const read = readAnswer(paper.items[index]!.question, answer);
        if (!read.ok) throw new Error(`${answer}: ${JSON.stringify(read.problems)}`);
        return read.value;
      });
      const { earned, outOf } = totalOf(marked(paper, answers));
      expect(earned).toBe(outOf);
    }
  });

  it('says what a wrong part costs, as marking by the program has it', () => {
    let looked = 0;
    for (const { paper } of papers)
      for (const [index, { question, marks }] of paper.items.entries()) {
        const right = rightAnswer(question);
        const { each } = keyOf(english, paper)[index]!;
        if (!('states' in right) || Object.keys(right.states).length === 1) {
          expect(each).toBe('all or nothing');
          continue;
        }
        const [item, ...others] = askQuestion(question).items;
        const wrong = item!.choices.find((choice) => choice !== right.states[item!.item])!;
        const answer = { ...right, states: { ...right.states, [item!.item]: wrong } } as Answer;
        // Where some parts have more choices than others, a wrong one costs by how many it has: `0.17 of 2 or 0.08 of 3`.
        const [, gain = '', costs = ''] = /^each right \+([\d.]+), wrong −(.+)$/.exec(each) ?? [];
        const cost = costs.includes(' of ')
          ? new RegExp(`([\\d.]+) of ${item!.choices.length}\\b`).exec(costs)![1]!
          : costs;
        const only: Paper = { ...paper, items: [paper.items[index]!] };
        const expected = others.length * Number(gain) - Number(cost);
        // Each figure of the key is rounded to a hundredth.
        const off = 0.005 * (others.length + 2);
        expect(
          Math.abs(earnedOf(marked(only, [answer]).items[0]!) - Math.max(0, expected)),
        ).toBeLessThanOrEqual(off);
        expect(Number(gain)).toBeCloseTo(marks / (others.length + 1), 1);
        looked++;
      }
    expect(looked).toBeGreaterThan(8);
  });

  it('has every paper by its code, in order, with every answer and a why of two lines at most', async () => {
    const { pages } = readPdf(
      await answerKeyPdf({ words: english, set, className, papers: papers.toReversed(), made }),
    );
    const text = pages.map(together).join(' ');
    const codes = papers.map(({ code }) => codeInGroups(code)).sort();
    const places = codes.map((code) => text.indexOf(code));
    expect(places).toEqual(places.toSorted((one, other) => one - other));
    expect(Math.min(...places)).toBeGreaterThan(0);
    for (const { paper, name } of papers) {
      expect(text).toContain(name);
      for (const { answer, why } of keyOf(english, paper)) {
        expect(text).toContain(answer);
        expect(text).toContain(why.slice(0, 40));
      }
    }
    for (const page of pages)
      expect(together(page)).toContain('It is no instruction to work on live equipment');
  });

  it('stands on no page of the papers', async () => {
    const print = await classPapersPdf({ words: english, set, className, closes: 'tomorrow', papers, made });
    const text = readPdf(print).pages.map(together).join(' ');
    for (const { paper } of papers)
      for (const { question } of paper.items) {
        const { answer } = keyOf(english, paper)[
          paper.items.findIndex((item) => item.question === question)
        ]!;
        // The right pair of terminals is among the choices offered; a reading has no choices.
        if (question.kind !== 'wiring' && question.kind !== 'meter') expect(text).not.toContain(answer);
      }
  });
});
