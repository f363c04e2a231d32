/** Nobody gets marks without reading the drawing (docs/guessing.md has it over ten times as many questions). */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { QuestionKind } from '../../shared/question.ts';
import { drawn } from '../support/drawn.ts';
import { ownBank } from '../support/own-bank.ts';
import { bestOf, mostNet, mostRight } from './bounds.ts';
import { chanceOf } from './guessing-tables.ts';
import { measure } from './measure.ts';
import { kindsIn, sampled } from './sample.ts';
import { caseOf } from './seen.ts';

const COUNT = drawn(120);
/** Three standard errors beyond a share that is measured on so many questions. */
const beyond = (share: number, count: number): number => share + 3 * Math.sqrt((share * (1 - share)) / count);

describe.each(kindsIn(ownBank()))('a %s question', (kind: QuestionKind) => {
  const rows = () => {
    const casesOf = (name: string) => sampled(ownBank(), COUNT, name, [kind]).map(caseOf);
    const asked = casesOf('to answer');
    return {
      measured: measure(casesOf('to learn from'), asked).filter(({ skill }) => skill === 'all'),
      asked,
    };
  };

  it('is hardly got right, and earns hardly anything, without the drawing', () => {
    const { measured, asked } = rows();
    expect(asked.length).toBe(COUNT);
    const best = bestOf(measured, 'right');
    const bound = mostRight(kind, kind === 'wiring' ? chanceOf(asked) : 0);
    expect(best.right, best.strategy).toBeLessThan(beyond(bound, COUNT));
    const earning = bestOf(measured, 'net');
    expect(earning.net, earning.strategy).toBeLessThan(beyond(mostNet(kind), COUNT));
  });
});

describe('docs/guessing.md', () => {
  const text = readFileSync(new URL('../../docs/guessing.md', import.meta.url), 'utf8');
  const rows = [
    ...text.matchAll(/^\| (\S+) \| (.+?) \| ([\d.]+) % \| (-?[\d.]+) \| ([\d.]+) \| (\d+) \|$/gm),
  ].map(([, kind, strategy, right, net, , questions]) => ({
    kind: kind as QuestionKind,
    strategy,
    right: Number(right) / 100,
    net: Number(net),
    questions: Number(questions),
  }));
  const boundOf = (kind: QuestionKind): number =>
    Number(
      new RegExp(`[ ,]${kind} ([\\d.]+) %`).exec(/^Bounds for whole questions:.*$/m.exec(text)![0])![1],
    ) / 100;

  it('has every kind and way of guessing, over two thousand questions each, and each within its bound', () => {
    const kinds = kindsIn(ownBank());
    expect(new Set(rows.map(({ kind }) => kind))).toEqual(new Set(kinds));
    expect(rows.filter(({ strategy }) => strategy === 'learned')).toHaveLength(kinds.length);
    for (const { kind, strategy, right, questions } of rows) {
      expect(questions).toBe(2_000);
      expect(right, `${kind} ${strategy}`).toBeLessThanOrEqual(boundOf(kind));
    }
  });
});
