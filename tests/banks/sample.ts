/** A small topic without a mistake, and a way to put one into it and say where. */
import { expect } from 'vitest';
import type { Checked, ToldProblem } from '../../shared/problem.ts';
import { readTopic } from '../../src/banks/index.ts';
import { told } from '../support/in-english.ts';

export const SAMPLE = `---
id: sample
title: A sample
summary: One lamp and one relay.
order: 1
skills:
  - id: first-skill
    title: The first
    recipes:
      - families: [make-only]
        kinds: [lamp-states]
        size: [1, 2]
  - id: second-skill
    title: The second
    needs: [first-skill]
    recipes:
      - families: [break-only, make-only]
        kinds: [lamp-states, sequence]
        size: [2, 3]
        share: 2
---

All of this is invented. It begins with *some* text.

## The fan

\`\`\`circuit id=fan
# Nursery: vent fan 1
supply A 24 V DC
-B1  field-contact make "Vent fan 1 running"
-K1  relay 2 poles
-H1  lamp white "Vent fan 1 standing"
-H2  lamp green "Vent fan 1 running"

A:L+  -B1:13-14  -K1:A1-A2  A:L-
A:L+  -K1:11-12  -H1:X1-X2  A:L-
-K1:11-14  -H2:X1-X2  A:L-
\`\`\`

More text, with \`-K1:11\` and [a link](https://example.org/).

\`\`\`drawing circuit=fan
do: make -B1
shows: -K1 operated, -H1 dark, -H2 lit
\`\`\`

### Details

| lamp | says |
|---|---|
| -H1 | standing |

## Questions

\`\`\`question id=fan-runs skill=first-skill kind=lamp-states circuit=fan
do: make -B1
asked: -H1, -H2
answer: -H1 dark, -H2 lit
because: The pole has moved.
\`\`\`

\`\`\`question id=own-circuit skill=second-skill kind=sequence
# A remark for other authors.
circuit:
  supply A 24 V AC
  -S1  push-button break red "Stop"
  -H1  lamp white "On"
  A:L  -S1:11-12  -H1:X1-X2  A:N
do: press -S1; release -S1
asked: -H1 after 0,
  -H1 after 1
answer: -H1 lit after 0, -H1 dark after 1
\`\`\`
`;

/** The mark that says where the mistake is expected; it isn't part of the text. */
const HERE = '¦';

interface Marked {
  readonly text: string;
  /** `12:3`, for each mark. */
  readonly places: readonly string[];
}

export function unmark(marked: string): Marked {
  const places = marked.split('\n').flatMap((line, index) =>
    line
      .split(HERE)
      .slice(0, -1)
      .map((_, at, pieces) => `${index + 1}:${pieces.slice(0, at + 1).join('').length + 1}`),
  );
  return { text: marked.replaceAll(HERE, ''), places };
}

/** The sample with one piece exchanged; the piece is there exactly once. */
export function changed(from: string, to: string, text = SAMPLE): string {
  const pieces = text.split(from);
  if (pieces.length !== 2) throw new Error(`${JSON.stringify(from)} is there ${pieces.length - 1} times`);
  return pieces.join(to);
}

/** The sample with several pieces exchanged, each of them there once. */
export const changedIn = (changes: readonly (readonly [from: string, to: string])[], text = SAMPLE): string =>
  changes.reduce((now, [from, to]) => changed(from, to, now), text);

export const placeOf = ({ line, column }: ToldProblem): string => `${line}:${column}`;

export function problemsIn(checked: Checked<unknown>): readonly ToldProblem[] {
  if (checked.ok) expect.fail('this was read, and should have been refused');
  return told(checked.problems);
}

/** Reads a topic in which every mark is a mistake of that code, and there is no other. */
export function expectMistakes(marked: string, ...codes: readonly string[]): readonly ToldProblem[] {
  const { text, places } = unmark(marked);
  const problems = problemsIn(readTopic('banks/sample.md', text));
  const found = problems.map((problem) => `${placeOf(problem)} ${problem.code}`);
  expect(found).toEqual(places.map((place, index) => `${place} ${codes[index]}`));
  for (const { file, message, hint } of problems) {
    expect(file).toBe('banks/sample.md');
    expect(message.length).toBeGreaterThan(10);
    expect(hint.length).toBeGreaterThan(8);
  }
  return problems;
}

/** Exchanges a piece of the sample for one with a mark in it, and expects that mistake there. */
export const expectMistake = (from: string, to: string, code: string): ToldProblem =>
  expectMistakes(changed(from, to), code)[0]!;
