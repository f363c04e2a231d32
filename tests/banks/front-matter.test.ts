/** Every mistake in front matter is told with its place. */
import { describe, expect, it } from 'vitest';
import { readTopic } from '../../src/banks/index.ts';
import { expectMistake, expectMistakes, problemsIn, SAMPLE } from './sample.ts';

describe('front matter', () => {
  it('without a mistake is read, with what may be left out filled in', () => {
    const read = readTopic('sample.md', SAMPLE);
    expect(read.ok && read.value.skills).toEqual([
      {
        id: 'first-skill',
        title: 'The first',
        needs: [],
        recipes: [{ families: ['make-only'], kinds: ['lamp-states'], size: [1, 2], share: 1 }],
      },
      {
        id: 'second-skill',
        title: 'The second',
        needs: ['first-skill'],
        recipes: [
          {
            families: ['break-only', 'make-only'],
            kinds: ['lamp-states', 'sequence'],
            size: [2, 3],
            share: 2,
          },
        ],
      },
    ]);
  });

  it('names the language that the file is written in; nothing else of it changes with that', () => {
    const read = (from: string) => {
      const topic = readTopic('sample.md', SAMPLE.replace('id: sample\n', `id: sample\n${from}`));
      if (!topic.ok) expect.fail('it was refused');
      return topic.value;
    };
    const { language, ...rest } = read('');
    expect(language).toBe('en');
    // As RFC 5646 has them written: letters 2.1.1, a language's newer tag 4.5.
    for (const [written, tag] of [
      ['de', 'de'],
      ['en-gb', 'en-GB'],
      ['ZH-HANT-TW', 'zh-Hant-TW'],
      ['de-CH-1901', 'de-CH-1901'],
      ['iw', 'he'],
      ['no', 'no'],
    ])
      expect(read(`language: ${written}\n`)).toEqual({ ...rest, language: tag });
  });

  it('may follow a byte order mark and have lines that end as on other systems', () => {
    expect(readTopic('sample.md', `\ufeff${SAMPLE.replaceAll('\n', '\r\n')}`)).toEqual(
      readTopic('sample.md', SAMPLE),
    );
  });

  it.each(['', '# Title\n', ' ---\nid: sample\n---\n', '---\nid: sample\n'])(
    'has to be there: %j',
    (text) => {
      expect(problemsIn(readTopic('sample.md', text))).toMatchObject([
        { code: 'bank-no-front-matter', line: 1, column: 1, file: 'sample.md' },
      ]);
    },
  );

  it.each([
    ['a key twice', 'order: 1', 'order: 1\n¦order: 2', 'bank-front-matter'],
    ['a tab as indentation', '    title: The first', '¦\t    title: The first', 'bank-front-matter'],
    ['a colon in a bare text', 'title: A sample', 'title: ¦A: sample', 'bank-front-matter'],
    ['an open quotation mark', 'title: A sample', 'title: "A sample\\"', 'bank-front-matter'],
    ['an anchor', 'title: A sample', 'title: &name ¦A sample', 'bank-front-matter'],
    ['a tag', 'title: A sample', 'title: ¦!secret A sample', 'bank-front-matter'],
    ['a list as a key', 'order: 1', 'order: 1\n? ¦[a, b]\n: 2', 'bank-front-matter'],
    ['a second document', 'order: 1', 'order: 1\n...\n¦more: 1', 'bank-front-matter'],
    ['an unknown key', 'order: 1', 'order: 1\n¦ordre: 2', 'bank-unknown-key'],
    [
      'an unknown key of a skill',
      '    title: The first',
      '    ¦titel: x\n    title: The first',
      'bank-unknown-key',
    ],
    [
      'an unknown key of a recipe',
      '        size: [1, 2]',
      '        size: [1, 2]\n        ¦sise: 3',
      'bank-unknown-key',
    ],
    ['no title', 'title: A sample\n', '', 'bank-missing-key'],
    [
      'no recipes',
      '    title: The first\n    recipes:\n      - families: [make-only]\n        kinds: [lamp-states]\n        size: [1, 2]',
      '    title: The first',
      'bank-missing-key',
    ],
    [
      'no recipe in the list',
      '    recipes:\n      - families: [make-only]\n        kinds: [lamp-states]\n        size: [1, 2]',
      '    recipes: ¦[]',
      'bank-value',
    ],
    ['an id in capitals', 'id: sample', 'id: ¦Sample', 'bank-value'],
    ['a language by its name', 'order: 1', 'order: 1\nlanguage: ¦English', 'bank-value'],
    ['a language by no tag', 'order: 1', 'order: 1\nlanguage: ¦de_AT', 'bank-value'],
    ['two languages', 'order: 1', 'order: 1\nlanguage: ¦[en, de]', 'bank-value'],
    ['an endless language', 'order: 1', `order: 1\nlanguage: ¦de-x-${'a-'.repeat(40)}b`, 'bank-value'],
    ['a number as a title', 'title: A sample', 'title: ¦7', 'bank-value'],
    ['nothing as a title', 'title: A sample', 'title:¦', 'bank-value'],
    [
      'a title with something a terminal would obey',
      'title: A sample',
      'title: ¦"A \\e[31m sample"',
      'bank-value',
    ],
    ['an order that is no number', 'order: 1', 'order: ¦first', 'bank-value'],
    ['an order below one', 'order: 1', 'order: ¦0', 'bank-value'],
    [
      'a skill that is no list of keys',
      '  - id: first-skill',
      '  - ¦nothing\n  - id: first-skill',
      'bank-value',
    ],
    ['a prerequisite in capitals', 'needs: [first-skill]', 'needs: [¦First]', 'bank-value'],
    ['an unknown kind of question', '[lamp-states, sequence]', '[lamp-states, ¦sequences]', 'bank-value'],
    ['one size', 'size: [1, 2]', 'size: ¦[1]', 'bank-value'],
    ['a size that is too large', 'size: [1, 2]', 'size: [1, ¦9]', 'bank-value'],
    ['a share of nothing', 'share: 2', 'share: ¦0', 'bank-value'],
    [
      'a section of the lesson that there is not',
      '    title: The first',
      '    title: The first\n    lesson: ¦The van',
      'bank-unknown-heading',
    ],
    [
      'a number as a section of the lesson',
      '    title: The first',
      '    title: The first\n    lesson: ¦7',
      'bank-value',
    ],
    ['an unknown family', '[break-only, make-only]', '[break-only, ¦mak-only]', 'bank-unknown-family'],
    ['sizes the wrong way round', 'size: [1, 2]', 'size: ¦[2, 1]', 'bank-recipe-size'],
    ['the id of another file', 'id: sample', 'id: ¦example', 'bank-file-name'],
  ])('with %s is refused there', (_, from, to, code) => {
    if (to.includes('¦')) {
      expectMistake(from, to, code);
      return;
    }
    const problems = problemsIn(readTopic('sample.md', SAMPLE.replace(from, to)));
    expect(problems.map((problem) => problem.code)).toEqual([code]);
    expect(problems[0]!.line).toBeGreaterThanOrEqual(2);
    expect(problems[0]!.line).toBeLessThanOrEqual(20);
  });

  it('with a size that the family has not got says which it has', () => {
    const { hint, message } = expectMistake(
      'families: [make-only]\n        kinds: [lamp-states]\n        size: [1, 2]',
      'families: [two-hand]\n        kinds: [lamp-states]\n        size: ¦[1, 8]',
      'bank-recipe-size',
    );
    expect(message).toMatch(/two-hand has the sizes 1 to [1-7]\./);
    expect(hint).toContain('recipe of its own');
  });

  it('says what a slip of the pen may have meant', () => {
    expect(expectMistake('order: 1', 'order: 1\n¦ordre: 2', 'bank-unknown-key').hint).toContain(
      'Did you mean order?',
    );
    expect(
      expectMistake('[break-only, make-only]', '[break-only, ¦mak-only]', 'bank-unknown-family').hint,
    ).toContain('Did you mean make-only?');
  });

  it('has all its mistakes told at once, with those of the lesson', () => {
    expectMistakes(
      SAMPLE.replace('order: 1', 'order: ¦x')
        .replace('size: [1, 2]', 'size: ¦[1]')
        .replace('-B1:13-14', '¦-B1:13-15')
        .replace('*some*', '¦<b>some¦</b>'),
      'bank-value',
      'bank-value',
      'bank-html',
      'bank-html',
      'unknown-terminal',
    );
  });
});

describe('hostile front matter', () => {
  const wrap = (front: string): string => `---\n${front}\n---\ntext\n`;
  const codesOf = (text: string): string[] => [
    ...new Set(problemsIn(readTopic('sample.md', text)).map(({ code }) => code)),
  ];

  it('with aliases that would grow without end is refused', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x]'];
    for (let level = 1; level < 12; level++)
      lines.push(
        `a${level}: &a${level} [${Array(9)
          .fill(`*a${level - 1}`)
          .join(', ')}]`,
      );
    expect(codesOf(wrap(lines.join('\n')))).toEqual(['bank-front-matter']);
  });

  it.each([
    ['brackets', '['.repeat(900)],
    ['braces', '{a: '.repeat(200)],
    ['a line that is too long', 'a'.repeat(1001)],
    ['list marks', `${'- '.repeat(400)}a`],
    ['question marks', Array.from({ length: 30 }, (_, n) => `${' '.repeat(n)}? a`).join('\n')],
    ['twenty thousand characters', `${'k: v\n'.repeat(4500)}`],
  ])('nested or grown out of %s is refused before it costs anything', (_, front) => {
    expect(codesOf(wrap(front))).toEqual(['bank-too-large']);
  });

  it('with keys that objects have anyway is refused as unknown keys', () => {
    expect(codesOf(wrap('__proto__: {id: x}\nconstructor: 1\ntoString: 2'))).toContain('bank-unknown-key');
  });
});
