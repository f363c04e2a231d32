/** Which ideas are told, in the light of earlier answers: the case that docs/misconceptions.md works out by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Earlier, ideasToTell, markAnswer } from '../../src/questions/index.ts';
import { HOLDS, heldAfter, likelihoodRatio, oddsOfIdea } from '../../src/questions/slip-or-idea.ts';
import { BOTH, breaks, lampsAnswered, lampsOf, legs, legsAllLit } from '../support/two-ideas.ts';

/** Today: the break legs of two changeovers. */
const twoLegs = `
# Nursery: irrigation off, two lamps
supply A 24 V AC
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-12 -H1:X1-X2 A:N
A:L -K1:21-22 -H2:X1-X2 A:N`;
const today = lampsOf(twoLegs, 'make -B1', ['-H1', '-H2']);
const oneLamp = lampsOf(twoLegs, 'make -B1', ['-H1']);

const bothLit = lampsAnswered('lit', 'lit');
const asIfNoneOpened: Earlier = { question: breaks, answer: lampsAnswered('lit', 'lit', 'lit') };
const allRight: Earlier = { question: breaks, answer: lampsAnswered('dark', 'lit', 'dark') };

const part = (correct: boolean, asIdea: boolean) => ({ item: '-H1', choices: 2, correct, asIdea });

describe('the case worked by hand', () => {
  const page = readFileSync(new URL('../../docs/misconceptions.md', import.meta.url), 'utf8');
  /** The rows of the page's table: idea, the ratio yesterday, the chance today before the answer, the odds after it. */
  const rows = [...page.matchAll(/^\| `([a-z-]+)` \| ([\d.]+) \| (0\.\d+) \| ([\d.]+) \|$/gm)];

  it('stands on the page as it comes out', () => {
    expect(rows.map(([, id]) => id)).toEqual(['break-never-opens', 'nothing-moves', 'both-legs-closed']);
    for (const [, id, ratio, chance, odds] of rows) {
      const held = heldAfter(HOLDS, Number(ratio));
      expect(held.toFixed(2), id).toBe(chance);
      const bothWrong = [part(false, true), part(false, true)];
      expect(Math.round(oddsOfIdea(bothWrong, held)), id).toBe(Number(odds));
    }
  });

  it('is what each part says: nineteen for the idea, a nineteenth against it, nothing where it makes no difference', () => {
    // By hand: 0.95 / 0.05 where the answer is the idea's and wrong, 0.05 / 0.95 where it is right and not the idea's.
    expect(likelihoodRatio([part(false, true), part(true, true), part(false, true)])).toBeCloseTo(361, 9);
    expect(likelihoodRatio([part(false, true), part(true, false), part(false, true)])).toBeCloseTo(19, 9);
    expect(likelihoodRatio([part(true, false)])).toBeCloseTo(1 / 19, 12);
    expect(likelihoodRatio([part(true, true), part(false, false)])).toBeCloseTo(1, 12);
  });

  it('loses an idea in time, and never quite', () => {
    // By hand: 361 x 0.05 / 0.95 = 19, of 20; then 0.05 + 0.8 x (0.95 - 0.05).
    expect(heldAfter(HOLDS, 361)).toBeCloseTo(0.77, 10);
    expect(heldAfter(0.77, 1)).toBeCloseTo(0.05 + 0.8 * 0.72, 10);
    expect(heldAfter(HOLDS, 1)).toBeCloseTo(HOLDS, 12);
    expect(heldAfter(HOLDS, 0)).toBeCloseTo(0.01, 12);
    expect(heldAfter(0.81, Number.MAX_VALUE * 10)).toBeCloseTo(0.81, 12);
  });
});

describe('the ideas that are told', () => {
  it('are none where more than two explain an answer alike', () => {
    expect(markAnswer(today, bothLit).mark.misconceptions.length).toBeGreaterThan(2);
    expect(ideasToTell(today, bothLit, [])).toEqual([]);
  });

  it('are the one that the answer before spoke for', () => {
    expect(ideasToTell(today, bothLit, [asIfNoneOpened])).toEqual(['break-never-opens']);
  });

  it('leave out those that the answer before spoke against', () => {
    // -H1 and -H3 dark and -H2 lit is what -K1 shows when it moves, so only what is about changeovers is left.
    expect(ideasToTell(today, bothLit, [allRight])).toEqual(['both-legs-closed']);
  });

  it('are told of one wrong part too, where an earlier answer speaks for them', () => {
    expect(ideasToTell(oneLamp, lampsAnswered('lit'), [])).toEqual([]);
    expect(ideasToTell(oneLamp, lampsAnswered('lit'), [asIfNoneOpened])).toEqual(['break-never-opens']);
    expect(ideasToTell(oneLamp, lampsAnswered('lit'), [allRight])).toEqual([]);
    // The mark that is kept holds what this answer by itself speaks for.
    expect(markAnswer(oneLamp, lampsAnswered('lit')).mark.misconceptions).toEqual([]);
  });

  it('go by what is newest', () => {
    const since = Array.from({ length: 3 }, () => allRight);
    expect(ideasToTell(today, bothLit, [asIfNoneOpened, ...since])).toEqual(['both-legs-closed']);
    expect(ideasToTell(today, bothLit, [...since, asIfNoneOpened])).toEqual(['break-never-opens']);
    // Of the oldest nothing is left.
    const many = Array.from({ length: 12 }, () => ({
      question: today,
      answer: lampsAnswered('dark', 'dark'),
    }));
    expect(ideasToTell(oneLamp, lampsAnswered('lit'), [asIfNoneOpened, ...many])).toEqual([]);
  });

  it('are what the mark names where nothing was answered before and one or two explain it', () => {
    const { misconceptions } = markAnswer(legs, legsAllLit).mark;
    expect(misconceptions).toEqual(BOTH);
    expect(ideasToTell(legs, legsAllLit, [])).toEqual(misconceptions);
  });

  it('are none for what is right, leaves something out, or answers another kind', () => {
    expect(ideasToTell(today, lampsAnswered('dark', 'dark'), [asIfNoneOpened])).toEqual([]);
    expect(ideasToTell(today, lampsAnswered('lit'), [asIfNoneOpened])).toEqual([]);
    expect(ideasToTell(today, { kind: 'meter', volts: 24 }, [asIfNoneOpened])).toEqual([]);
  });

  it('take no notice of an earlier answer to another kind, or of what it leaves out', () => {
    const odd: Earlier = { question: breaks, answer: { kind: 'wiring', choice: 1 } };
    const blank: Earlier = { question: breaks, answer: { kind: 'lamp-states', states: {} } };
    expect(ideasToTell(today, bothLit, [odd, blank])).toEqual([]);
  });
});
