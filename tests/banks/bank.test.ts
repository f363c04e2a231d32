/** What concerns more than one topic of a bank. */
import { describe, expect, it } from 'vitest';
import { type BankFile, readBank } from '../../src/banks/index.ts';
import { changedIn, placeOf, problemsIn, SAMPLE, unmark } from './sample.ts';

/** The sample as another topic with other skills. */
const other = (...changes: readonly (readonly [string, string])[]): string =>
  changedIn(
    changes,
    SAMPLE.replace('id: sample', 'id: other')
      .replace('order: 1', 'order: 2')
      .replaceAll('first-skill', 'third-skill')
      .replaceAll('second-skill', 'fourth-skill'),
  );

const sample = (...changes: readonly (readonly [string, string])[]): string => changedIn(changes);

const bankOf = (one: string, two: string): readonly BankFile[] => [
  { file: 'banks/sample.md', text: one },
  { file: 'banks/other.md', text: two },
];

/** Reads two topics in which every mark is a mistake of that code, and there is no other. */
function expectBankMistakes(one: string, two: string, ...codes: readonly string[]): void {
  const files = bankOf(one, two).map(({ file, text }) => ({ file, ...unmark(text) }));
  const places = files.flatMap(({ file, places: all }) => all.map((place) => `${file}:${place}`));
  const told = problemsIn(readBank(files)).map(
    (problem) => `${problem.file}:${placeOf(problem)} ${problem.code}`,
  );
  expect(told).toEqual(places.map((place, index) => `${place} ${codes[index]}`));
}

describe('a bank', () => {
  it('has its topics by their order, whatever the order of the files', () => {
    const bank = readBank(bankOf(sample(['order: 1', 'order: 30']), other()));
    expect(bank.ok && bank.value.topics.map(({ id }) => id)).toEqual(['other', 'sample']);
  });

  it('may be empty', () => {
    expect(readBank([])).toEqual({ ok: true, value: { topics: [] } });
  });

  it('has prerequisites across topics, in either direction of the files', () => {
    expect(readBank(bankOf(sample(['needs: [first-skill]', 'needs: [fourth-skill]']), other())).ok).toBe(
      true,
    );
  });

  it('refuses a prerequisite that there is not, where it is named', () => {
    expectBankMistakes(
      sample(['needs: [first-skill]', 'needs: [first-skill, ¦fith-skill, ¦sixth-skill]']),
      other(['needs: [third-skill]', 'needs: [¦seventh-skill]']),
      'unknown-skill',
      'unknown-skill',
      'unknown-skill',
    );
  });

  it('refuses prerequisites that go round in a circle across topics', () => {
    expectBankMistakes(
      sample(['id: first-skill', 'id: ¦first-skill\n    needs: [fourth-skill]']),
      other(['id: third-skill', 'id: third-skill\n    needs: [second-skill]']),
      'skill-circle',
    );
  });

  it('refuses a skill that stands on itself', () => {
    expectBankMistakes(
      sample(['id: first-skill', 'id: ¦first-skill\n    needs: [first-skill]']),
      other(),
      'skill-circle',
    );
  });

  it('refuses a skill that is in two topics', () => {
    expectBankMistakes(
      sample(),
      other(
        ['id: third-skill', 'id: ¦first-skill'],
        ['needs: [third-skill]', 'needs: []'],
        ['skill=third-skill', 'skill=first-skill'],
      ),
      'duplicate-skill',
    );
  });

  it('refuses two topics of the same name, and a file with a name that is not its topic', () => {
    expectBankMistakes(
      sample(),
      other(['id: other', 'id: ¦¦sample']),
      'bank-file-name',
      'bank-repeated-name',
    );
  });

  it('refuses two topics with the same place', () => {
    expectBankMistakes(sample(), other(['order: 2', 'order: ¦1']), 'bank-repeated-order');
  });

  it('refuses a question for a skill of another topic', () => {
    expectBankMistakes(sample(), other(['skill=third-skill', 'skill=¦first-skill']), 'bank-unknown-skill');
  });

  it('refuses a link to a topic that is not there', () => {
    expectBankMistakes(
      sample(['https://example.org/', 'other.md']),
      other(['[a link](https://example.org/)', '¦[a link](third.md)']),
      'bank-link',
    );
  });

  it('has the mistakes of all files told, file by file', () => {
    expectBankMistakes(
      sample(['order: 1', 'order: ¦x']),
      other(['size: [1, 2]', 'size: ¦[2, 1]'], ['do: press -S1', 'do: ¦pres -S1']),
      'bank-value',
      'bank-recipe-size',
      'unknown-act',
    );
  });

  it('does not call a prerequisite unknown when its topic could not be read', () => {
    expectBankMistakes(
      sample(['order: 1', 'order: ¦x']),
      other(['needs: [third-skill]', 'needs: [first-skill]']),
      'bank-value',
    );
  });

  it('has at most 500 files', () => {
    const files = Array.from({ length: 501 }, (_, n) => ({ file: `t${n}.md`, text: '' }));
    expect(problemsIn(readBank(files))).toMatchObject([{ code: 'bank-too-large', file: 't500.md', line: 1 }]);
  });
});

describe('trying the recipes', () => {
  it('finds a family that gives no question of a kind, at its place', () => {
    const { text, places } = unmark(
      sample([
        'families: [make-only]\n        kinds: [lamp-states]',
        'families: [¦make-only]\n        kinds: [input-states]',
      ]),
    );
    const files = [{ file: 'sample.md', text }];
    expect(readBank(files).ok).toBe(true);
    const problems = problemsIn(readBank(files, { tryRecipes: true }));
    expect(problems.map((problem) => `${placeOf(problem)} ${problem.code}`)).toEqual([
      `${places[0]} bank-recipe-empty`,
    ]);
    expect(problems[0]!.message).toContain('input-states');
  });

  it('finds nothing wrong with recipes that give questions', () => {
    expect(readBank([{ file: 'sample.md', text: SAMPLE }], { tryRecipes: true }).ok).toBe(true);
  });
});
