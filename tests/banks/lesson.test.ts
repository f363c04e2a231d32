/** Lessons: what of Markdown they have, what is refused and where, and how they are kept. */
import { describe, expect, it } from 'vitest';
import { readTopic } from '../../src/banks/index.ts';
import { changed, expectMistake, expectMistakes, problemsIn, SAMPLE } from './sample.ts';

const INTRO = 'All of this is invented. It begins with *some* text.';
const inIntro = (markdown: string): string => changed(INTRO, markdown);

describe('a lesson', () => {
  it('keeps its text as Markdown, paragraphs that follow one another in one part', () => {
    const text = inIntro(
      'One  \nline.\n\n- an *item*\n- another\n\n> Isolate first.\n\n1. `-K1:11`\n2. **last**',
    );
    const read = readTopic('sample.md', text);
    expect(read.ok && read.value.lesson[0]!.parts).toEqual([
      {
        kind: 'text',
        markdown: 'One\nline.\n\n- an *item*\n- another\n\n> Isolate first.\n\n1. `-K1:11`\n2. **last**',
      },
    ]);
  });

  it('keeps a table as it was written', () => {
    const read = readTopic('sample.md', SAMPLE);
    expect(read.ok && read.value.lesson[2]).toEqual({
      title: 'Details',
      depth: 3,
      parts: [{ kind: 'text', markdown: '| lamp | says |\n|---|---|\n| -H1 | standing |' }],
    });
  });

  it('may have signs that look like HTML and are none', () => {
    expect(readTopic('sample.md', inIntro('U < 0.8 V, and 5 > 3 \\<b> `<b>`.')).ok).toBe(true);
  });

  it('may link to topics and to https addresses', () => {
    expect(readTopic('sample.md', inIntro('[a](other-topic.md) [b](https://example.org/a?b=c)')).ok).toBe(
      true,
    );
  });

  it.each([
    ['HTML in a line', 'Text ¦<b>bold¦</b>.', 'bank-html'],
    ['HTML in the second line of a paragraph', 'Text\nmore ¦<img src=x onerror=alert(1)> text', 'bank-html'],
    ['HTML as a block', '¦<script>\nalert(1)\n</script>', 'bank-html'],
    ['HTML in a list', '- item\n- item ¦<i>', 'bank-html'],
    ['HTML in a list in a list', '- item\n  - inner ¦<i>', 'bank-html'],
    ['HTML in a quote', '> quote\n> goes ¦<i>on', 'bank-html'],
    ['HTML in a table', '| a | b |\n|---|---|\n| c | ¦<i> |', 'bank-html'],
    ['HTML in strong text', 'so **very ¦<u>** much', 'bank-html'],
    ['a comment', 'Text\n\n¦<!-- hidden -->', 'bank-html'],
    ['a picture', 'Look: ¦![fan](fan.png)', 'bank-markdown'],
    ['a link to a script', 'Click ¦[here](javascript:alert(1))', 'bank-link'],
    ['a link with data', 'Click ¦[here](data:text/html,x)', 'bank-link'],
    ['a link that is not safe on the way', 'See ¦[here](http://example.org/)', 'bank-link'],
    ['a bare address', 'See ¦www.example.org now', 'bank-link'],
    ['a mail address', 'Ask ¦a@example.org now', 'bank-link'],
    ['a link out of the folder', 'See ¦[here](../secret.md)', 'bank-link'],
    ['an address of a link by itself', 'Text.\n\n¦[a]: https://example.org/', 'bank-markdown'],
    ['a rule across', 'Text.\n\n¦***\n\nText.', 'bank-markdown'],
    ['struck out text', 'This ¦~~is~~ not', 'bank-markdown'],
    ['a box to tick', '- ¦[ ] done', 'bank-markdown'],
    ['indented code', 'Text.\n\n¦    code', 'bank-block-place'],
    ['a block in a list', '- item\n\n  ¦```circuit id=x\n  supply A 24 V AC\n  ```', 'bank-block-place'],
    ['a block in a quote', '> quote\n>\n> ¦```circuit id=x\n> ```', 'bank-block-place'],
    ['a heading in a quote', '> ¦# Title', 'bank-heading'],
    ['a table in a quote', '> ¦| a | b |\n> |---|---|\n> | c | d |', 'bank-markdown'],
    ['a heading of the first depth', '¦# Title\n\nText.', 'bank-heading'],
    ['a heading that is too deep', 'Text.\n\n## A\n\nText.\n\n¦#### B\n\nText.', 'bank-heading'],
    ['a part before any section', 'Text.\n\n¦### A\n\nText.', 'bank-heading'],
    ['HTML in a heading', 'Text.\n\n## A ¦<b>\n\nText.', 'bank-html'],
    ['a heading over nothing', 'Text.\n\n¦## A\n\n## B\n\nText.', 'bank-heading'],
    ['plain code', 'Text.\n\n```¦\ncode\n```', 'bank-unknown-block'],
    ['code of a language', 'Text.\n\n```¦js\ncode\n```', 'bank-unknown-block'],
    ['a character nobody sees', 'Text ¦\u202e turned round', 'bank-character'],
    ['a character a terminal obeys', 'Text ¦\u001b[31m red', 'bank-character'],
    ['half a character', 'Text ¦\ud800.', 'bank-character'],
  ])('with %s is refused there', (_, markdown, code) => {
    const marks = markdown.split('¦').length - 1;
    expectMistakes(inIntro(markdown), ...Array<string>(marks).fill(code));
  });

  it('with a heading at its end has nothing under it', () => {
    expectMistakes(`${SAMPLE}\n¦## More\n`, 'bank-heading');
  });

  it('with a part of a section needs no text directly under the section', () => {
    const text = changed('## The fan\n', '## The fans\n\n### The first\n');
    expect(readTopic('sample.md', text).ok).toBe(true);
  });

  it('has a heading of at most 120 characters', () => {
    expectMistake('## The fan', `¦## ${'x'.repeat(121)}`, 'bank-heading');
  });
});

describe('limits that keep a hostile lesson from costing anything', () => {
  it.each([
    ['characters', `${'x '.repeat(400)}\n`.repeat(260)],
    ['lines', 'x\n'.repeat(5001)],
    ['characters in a line', 'x'.repeat(1001)],
    ['quotes in quotes', `${'>'.repeat(30)} x`],
    ['lists in lists', `${'- '.repeat(20)}x`],
    ['numbers in numbers', `${'1. '.repeat(20)}x`],
    ['indentation', `${' '.repeat(30)}x`],
    ['characters in a paragraph', `${'word '.repeat(100)}\n`.repeat(9)],
    ['signs of emphasis', `${'*a_ '.repeat(50)}\n`.repeat(2)],
  ])('too many %s are refused', (_, text) => {
    expect(problemsIn(readTopic('sample.md', inIntro(text))).map(({ code }) => code)).toEqual([
      'bank-too-large',
    ]);
  });

  it('mistakes are listed up to a number, and then said to be more', () => {
    const problems = problemsIn(readTopic('sample.md', inIntro('<b>\n\n'.repeat(300))));
    expect(problems).toHaveLength(201);
    expect(problems.at(-1)!.code).toBe('bank-too-many-problems');
  });
});
