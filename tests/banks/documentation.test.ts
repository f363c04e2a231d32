/** docs/writing-a-bank.md and the bank's rows of docs/errors.md say what the source does. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bankSkill, recipe, topic } from '../../shared/bank.ts';
import { questionKind } from '../../shared/question.ts';
import { BANK_CODES, BANK_LIMITS, readBank } from '../../src/banks/index.ts';
import { STATES } from '../../src/questions/index.ts';
import { expectMistakes, SAMPLE } from './sample.ts';

const page = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');
const guide = page('writing-a-bank.md');

/** First cells of the tables under a heading, table by table. */
function tables(heading: string): string[][] {
  const section = guide.split(/^##+ /m).find((part) => part.startsWith(heading)) ?? '';
  return section.split('\n\n').flatMap((part) => {
    const rows = part.split('\n').filter((line) => line.startsWith('| `'));
    return rows.length === 0
      ? []
      : [rows.flatMap((row) => [...row.split(' | ')[0]!.matchAll(/`([^`]+)`/g)].map((match) => match[1]!))];
  });
}

describe('docs/writing-a-bank.md', () => {
  const [example = ''] = [...guide.matchAll(/^````markdown\n([\s\S]*?)^````$/gm)].map((match) => match[1]!);

  it('has a topic that is read without a mistake, its recipes tried', () => {
    const bank = readBank([{ file: 'holding-relay.md', text: example }], { tryRecipes: true });
    expect(bank.ok ? [] : bank.problems).toEqual([]);
    expect(bank.ok && bank.value.topics[0]!.questions).toHaveLength(1);
  });

  it('has every key of the front matter, of a skill and of a recipe', () => {
    const made = ['lesson', 'circuits', 'questions'];
    expect(tables('Front matter')).toEqual([
      Object.keys(topic.shape).filter((key) => !made.includes(key)),
      Object.keys(bankSkill.shape),
      Object.keys(recipe.shape),
    ]);
  });

  it('has every kind of question', () => {
    const [, , kinds = []] = tables('`question`');
    expect(kinds.toSorted()).toEqual(questionKind.options.toSorted());
  });

  it('has the settings and keys of the blocks, as a mistake in them lists them', () => {
    const listed = (text: string): string[] =>
      text
        .replace(/.* are /, '')
        .replace(/[=….]/g, '')
        .split(/, | and /);
    const { hint: settings } = expectMistakes(
      SAMPLE.replace('kind=sequence', 'kind=sequence ¦x=y'),
      'bank-setting',
    )[0]!;
    expect(listed(settings.split(', without')[0]!)).toEqual(tables('`question`')[0]);
    const { hint: keys } = expectMistakes(
      SAMPLE.replace('do: make -B1\nshows', '¦x: y\nshows'),
      'bank-unknown-key',
    )[0]!;
    expect(listed(keys)).toEqual(tables('`drawing`')[1]);
  });

  it('has every word for a state', () => {
    const words = guide.slice(guide.indexOf('The words for states'), guide.indexOf('A wiring question'));
    for (const states of Object.values(STATES)) {
      const row = words.split(';').find((part) => part.includes(`\`${states[0]}\``)) ?? '';
      expect([...row.matchAll(/`([^`]+)`/g)].map((match) => match[1]).toSorted()).toEqual(states.toSorted());
    }
  });

  it('has the limits', () => {
    const limits = guide.slice(guide.indexOf('## Limits'));
    const { characters, lines, lineLength, paragraph, devicesInACircuit, actsInAScenario } = BANK_LIMITS;
    for (const figure of [characters, lines, lineLength, paragraph, devicesInACircuit, actsInAScenario])
      expect(limits).toMatch(new RegExp(`\\b${figure}\\b`));
  });
});

describe('docs/errors.md', () => {
  it('has the codes of question banks with their meanings, and no others', () => {
    const rows = page('errors.md')
      .split('\n')
      .map((line) => line.slice(2, -2).split(' | '))
      .filter(([, source]) => source === 'question bank');
    expect(rows).toEqual(
      BANK_CODES.map((code) => [`\`${code}\``, 'question bank', expect.stringMatching(/^[A-Z].*\.$/)]),
    );
  });
});
