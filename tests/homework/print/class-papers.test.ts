import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Paper } from '../../../shared/homework.ts';
import { codeInGroups } from '../../../src/homework/index.ts';
import {
  type ClassPapersRequest,
  classPapersPdf,
  type PrintedPaper,
} from '../../../src/homework/print/index.ts';
import { shown } from '../../../src/homework/print/letters.ts';
import { blankAnswer, rightAnswer } from '../../../src/questions/index.ts';
import { english } from '../../../src/words/en/core.ts';
import { askQuestion, markAnswer } from '../../support/in-english.ts';
import { className, made, papers, set } from './class-to-print.ts';
import { readPdf, together, withoutId } from './read-pdf.ts';

const closes = 'Friday 3 April 2026, 18:00';
const print = (list: readonly PrintedPaper[], more: Partial<ClassPapersRequest> = {}): Promise<Uint8Array> =>
  classPapersPdf({ words: english, set, className, closes, papers: list, made, ...more });

const whole = print(papers).then(readPdf);

/** The pages of each paper, by its code at their foot. */
async function pagesOf({ code }: PrintedPaper): Promise<readonly (readonly string[])[]> {
  const { pages } = await whole;
  return pages.filter((page) => page.some((text) => text.startsWith(`${codeInGroups(code)}, page `)));
}

describe("a class's printed papers", () => {
  it('begin on a page of their own, and count their pages', async () => {
    const { pages, file } = await whole;
    const counts = await Promise.all(papers.map(async (paper) => (await pagesOf(paper)).length));
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(pages.length);
    for (const paper of papers) {
      const own = await pagesOf(paper);
      own.forEach((page, index) => {
        expect(page).toContain(`${index + 1} of ${own.length}`);
      });
    }
    // 210 x 297 mm in points of 1/72 inch.
    for (const [, wide, high] of file.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g))
      expect([Math.round(Number(wide)), Math.round(Number(high))]).toEqual([595, 842]);
  });

  it('say on the first page whose they are, and on every page the name, the code and what this is not', async () => {
    for (const paper of papers) {
      const own = await pagesOf(paper);
      const first = own[0]!;
      for (const text of [set.title, className, closes, `of ${2 * set.places.length}`])
        expect(first).toContain(text);
      for (const page of own) {
        expect(page).toContain(paper.name);
        expect(page).toContain(codeInGroups(paper.code));
        expect(together(page)).toContain('It is no instruction to work on live equipment');
        for (const { name } of papers) if (name !== paper.name) expect(together(page)).not.toContain(name);
      }
    }
  });

  it('have every item in words, whole on one page, with a place for each answer and for the mark', async () => {
    for (const { paper, ...rest } of papers) {
      const own = await pagesOf({ paper, ...rest });
      for (const [index, { question, marks }] of paper.items.entries()) {
        const asked = askQuestion(question);
        const page = own.find((texts) =>
          texts.some(
            (text, at) =>
              text === String(index + 1) &&
              texts[at + 1] === asked.title &&
              texts[at + 2] === `${marks} marks`,
          ),
        );
        expect(page, `item ${index + 1}`).toBeDefined();
        const text = together(page!);
        expect(page).toContain(`of ${marks}`);
        expect(text).toContain(shown(asked.task));
        for (const sentence of [...asked.situation, ...asked.cautions])
          expect(text).toContain(shown(sentence));
        for (const { label, choices, unit } of asked.items) {
          if (unit) expect(text).toContain(`${label}: V nothing`);
          else if (question.kind === 'wiring')
            for (const choice of choices) expect(text).toContain(`. ${choice}`);
          else {
            // After the moment, which a sequence says once for all that is asked of it.
            expect(text).toContain(
              question.kind === 'sequence' ? label.slice(label.lastIndexOf(': -') + 2) : label,
            );
            for (const choice of choices)
              expect(page!.filter((each) => each === choice).length).toBeGreaterThanOrEqual(
                asked.items.filter((item) => item.choices.includes(choice)).length,
              );
          }
        }
      }
    }
  });

  it('have the drawing of every item, and its words for a reader that cannot see', async () => {
    const { file } = await whole;
    for (const paper of papers) {
      const own = (await pagesOf(paper)).map(together).join(' ');
      for (const { question } of paper.paper.items)
        for (const { name, kind } of question.circuit.devices)
          if (kind === 'lamp' || kind === 'relay') expect(own).toContain(name);
    }
    const figures = file.match(/\/S \/Figure/g) ?? [];
    expect(figures.length).toBeGreaterThanOrEqual(papers.length * set.places.length);
    expect(file.match(/\/Alt \(/g)).toHaveLength(figures.length);
  });

  it('are the same whatever the questions keep to themselves', async () => {
    const changed = papers.map(({ paper, ...rest }, number): PrintedPaper => {
      const items = paper.items.map((item) => ({
        ...item,
        draw: item.draw + 7,
        difficulty: item.difficulty / 2,
        circuit: `c${number}`,
        skill: 'another-skill',
        secondsExpected: 1,
        question: { ...item.question, seed: 'another seed', family: 'another' },
      }));
      return { ...rest, paper: { ...paper, learner: 'somebody-else', items } as Paper };
    });
    const [one, other] = await Promise.all([print(papers), print(changed)]);
    expect(withoutId(other)).toBe(withoutId(one));
  });

  it('tell nothing of the answers: not a sentence of an explanation, and no state more often than it is offered', async () => {
    const { pages } = await whole;
    const text = pages.map(together).join(' ');
    for (const { paper } of papers)
      for (const { question } of paper.items) {
        for (const answer of [rightAnswer(question), blankAnswer(question)]) {
          const { decides, story } = markAnswer(question, answer).explanation;
          const steps = [...decides, ...decides.flatMap(({ behind }) => behind), ...story];
          // An act is told in the question as well.
          for (const step of steps.filter((each) => !/^\d+\. /.test(each.text)))
            expect(text).not.toContain(step.text);
        }
      }
    const offered = papers.flatMap(({ paper }) =>
      paper.items.flatMap(({ question }) =>
        askQuestion(question).items.flatMap(({ choices }) => (question.kind === 'wiring' ? [] : choices)),
      ),
    );
    for (const state of ['lit', 'dark', 'operated', 'rest', 'live', 'dead'])
      expect(pages.flat().filter((each) => each === state)).toHaveLength(
        offered.filter((each) => each === state).length,
      );
  });

  it('come out the same again, also where they come one by one and the file goes out in pieces', async () => {
    const whole = await print(papers);
    expect(withoutId(await print(papers))).toBe(withoutId(whole));
    async function* oneByOne() {
      for (const paper of papers) yield paper;
    }
    const pieces: Uint8Array[] = [];
    const left = await print([], { papers: oneByOne(), out: (piece) => void pieces.push(piece) });
    expect(left).toHaveLength(0);
    expect(pieces.length).toBeGreaterThan(1);
    expect(withoutId(Buffer.concat(pieces))).toBe(withoutId(whole));
  });

  it('keep their layout with any name', async () => {
    const [first] = papers;
    const plain = readPdf(await print([first!]));
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 80 }), async (name) => {
        const { pages } = readPdf(await print([{ ...first!, name }]));
        expect(pages).toHaveLength(plain.pages.length);
        for (const page of pages) expect(page).toContain(codeInGroups(first!.code));
      }),
      { numRuns: 15 },
    );
  });

  it('leave the place of a name free that cannot be printed, and say so', async () => {
    const { pages } = readPdf(await print([{ ...papers[0]!, name: '李小龙' }]));
    expect(together(pages[0]!)).toContain('write it in by hand');
    expect(pages.flat()).not.toContain('???');
    const accents = readPdf(await print([{ ...papers[0]!, name: 'Łukasz Čapek-Şahin' }]));
    expect(accents.pages[0]).toContain('Lukasz Capek-Sahin');
    expect(together(accents.pages[0]!)).not.toContain('write it in by hand');
  });
});
