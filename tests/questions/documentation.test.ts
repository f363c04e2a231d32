/** docs/questions.md, docs/misconceptions.md and their rows of docs/errors.md say what the source does. */

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { questionKind } from '../../shared/question.ts';
import { MISCONCEPTIONS } from '../../src/misconceptions/index.ts';
import { QUESTION_CODES, shareOf } from '../../src/questions/index.ts';
import type { Part } from '../../src/questions/kind.ts';
import { english } from '../../src/words/en/core.ts';
import { markAnswer, readAnswer } from '../support/in-english.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';
import { LAMPS } from './fixed.ts';

const page = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');
const rows = (text: string): string[][] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .map((line) => line.slice(2, -2).split(' | '));

describe('docs/questions.md', () => {
  it('has a row for every kind, and no others', () => {
    const kinds = rows(page('questions.md')).flatMap(
      ([first]) => /^`([a-z-]+)`$/.exec(first ?? '')?.[1] ?? [],
    );
    expect([...kinds].sort()).toEqual([...questionKind.options].sort());
  });

  it('has the shares that the rule for part marks gives', () => {
    const share = (right: number, wrong: number, out: number): number =>
      shareOf([
        ...Array.from<unknown, Part>({ length: right }, () => ({
          item: 'x',
          right: { says: 'lit' },
          given: { says: 'lit' },
          correct: true,
          choices: 2,
        })),
        ...Array.from<unknown, Part>({ length: wrong }, () => ({
          item: 'x',
          right: { says: 'lit' },
          given: { says: 'dark' },
          correct: false,
          choices: 2,
        })),
        ...Array.from<unknown, Part>({ length: out }, () => ({
          item: 'x',
          right: { says: 'lit' },
          correct: false,
          choices: 2,
        })),
      ]);
    const told = rows(page('questions.md')).filter(([, value]) => /^[01](?:\.[0-9]+)?$/.test(value ?? ''));
    expect(told.map(([, value]) => Number(value))).toEqual(
      [share(3, 0, 0), share(2, 0, 1), share(2, 1, 0), share(1, 1, 1), share(0, 0, 3)].map(
        (value) => Math.round(value * 100) / 100,
      ),
    );
  });

  it('has the explanation that the example gets', () => {
    const circuit = circuitOf(`
supply A 24 V DC
-F1 breaker
-B1 field-contact make "Bin 2 full"
-K3 relay
-H1 lamp
-H2 lamp
A:L+ -F1:1-2 -B1:13-14 -K3:A1-A2 A:L-
-F1:2 -K3:11-12 -H1:X1-X2 A:L-
-K3:11-14 -H2:X1-X2 A:L-`);
    const { explanation } = markAnswer(
      {
        kind: 'lamp-states',
        circuit,
        scenario: scenarioOf('make -B1'),
        family: 'fixed',
        asked: ['-H1', '-H2'],
      },
      { kind: 'lamp-states', states: {} },
    );
    const lines = [
      ...explanation.decides.flatMap(({ text, behind }) => [text, ...behind.map((step) => `  ${step.text}`)]),
      '',
      ...explanation.story.map(({ text }) => text),
    ];
    expect(page('questions.md')).toContain(`\`\`\`\n${lines.join('\n')}\n\`\`\``);
  });

  it('gives typed answers about states that are read', () => {
    const states = rows(page('questions.md')).filter(([first]) => first?.startsWith('states'));
    const examples = states.flatMap(([, second]) =>
      [...(second ?? '').matchAll(/`([^`]+)`/g)].map(([, text]) => text!),
    );
    expect(examples.length).toBeGreaterThan(8);
    for (const text of examples.filter((text) => text !== '?'))
      expect(readAnswer(LAMPS, text), text).toMatchObject({ ok: true });
  });
});

describe('docs/misconceptions.md', () => {
  it('has every misconception with its idea, its advice and its source, and no others', () => {
    const text = page('misconceptions.md');
    const sections = text.split(/^## /m).slice(1);
    expect(sections.map((section) => section.split('\n')[0])).toEqual(
      MISCONCEPTIONS.map(({ id }) => `\`${id}\``),
    );
    sections.forEach((section, index) => {
      const { id } = MISCONCEPTIONS[index]!;
      const { idea, advice } = english.ideas[id as keyof typeof english.ideas];
      const words = section.replace(/\s+/g, ' ');
      for (const said of [idea, advice]) expect(words).toContain(said);
      // What it is known from is said here, and nowhere else.
      const sources = [...words.matchAll(/Source: ([^.]*)\./g)].map(([, source]) => source);
      expect(sources, id).toHaveLength(1);
      expect(['common practice, no source', 'shown by published training texts and forums']).toContain(
        sources[0],
      );
    });
  });
});

describe('docs/errors.md', () => {
  it('has the codes of answers and questions with their meanings, and no others', () => {
    const told = rows(page('errors.md')).filter(([, source]) => source === 'answer' || source === 'question');
    expect(told).toEqual(
      QUESTION_CODES.map((code) => [`\`${code}\``, code.split('-')[0], expect.stringMatching(/^[A-Z].*\.$/)]),
    );
  });
});
