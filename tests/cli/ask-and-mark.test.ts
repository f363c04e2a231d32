import { describe, expect, it } from 'vitest';
import { asked, question, questionKind, toldMark } from '../../shared/question.ts';
import { runCommand } from './fake-io.ts';

const ask = async (...words: string[]) => runCommand(['ask', ...words]);

describe('ask', () => {
  it('prints a question that the contracts describe, without its answer', async () => {
    const { code, out } = await ask('--seed', '1');
    expect(code).toBe(0);
    const value = JSON.parse(out);
    expect(question.parse(value.question)).toBeDefined();
    expect(asked.parse(value.asked)).toBeDefined();
    expect(Object.keys(value).sort()).toEqual(['asked', 'question']);
  });

  it('prints the answer only when it is asked for', async () => {
    const { out } = await ask('--seed', '1', '--with-answer');
    expect(Object.keys(JSON.parse(out)).sort()).toEqual(['answer', 'asked', 'question']);
  });

  it('gives the same question for the same seed', async () => {
    expect((await ask('--seed', '42', '--family', 'seal-in')).out).toBe(
      (await ask('--seed', '42', '--family', 'seal-in')).out,
    );
    expect((await ask('--seed', '42')).out).not.toBe((await ask('--seed', '43')).out);
  });

  it.each(questionKind.options)('can ask for %s in some family', async (kind) => {
    const families = {
      'input-states': 'two-supplies',
      'still-live': 'two-supplies',
      sequence: 'seal-in',
    } as Readonly<Record<string, string>>;
    const { code, out, err } = await ask(
      '--kind',
      kind,
      '--family',
      families[kind] ?? 'status-pair',
      '--seed',
      '5',
    );
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(JSON.parse(out).question.kind).toBe(kind);
  });

  it('asks for a skill of the banks', async () => {
    const wrong = await ask('--skill', 'juggling');
    expect(wrong.code).toBe(2);
    const [, skill] = wrong.err.match(/Skills: ([a-z0-9-]+)/)!;
    const { code, out } = await ask('--skill', skill!, '--seed', '9');
    expect(code).toBe(0);
    expect(JSON.parse(out).question.family).not.toBe('fixed');
  });

  it.each([
    ['--family', 'nothing'],
    ['--kind', 'riddle'],
    ['--size', '99'],
    ['--size', 'big'],
  ])('refuses %s %s', async (option, value) => {
    const { code, err } = await ask(option, value);
    expect(code).toBe(2);
    expect(err).toContain(value);
  });
});

describe('mark', () => {
  it('marks what ask has asked, from a file, in words and as JSON', async () => {
    const { out } = await ask('--seed', '7', '--with-answer');
    const files = { 'q.json': out };
    const words = await runCommand(['mark', 'q.json'], { files });
    expect(words.code).toBe(0);
    expect(words.out).toContain('Right.');
    const json = await runCommand(['mark', 'q.json', '--json'], { files });
    expect(toldMark.parse(JSON.parse(json.out)).share).toBe(1);
  });

  it('takes a typed answer, and a wrong one ends with 0 too', async () => {
    const { out } = await ask('--seed', '7', '--kind', 'lamp-states', '--with-answer');
    const { question: asking, answer } = JSON.parse(out);
    const other = Object.entries(answer.states as Record<string, string>).map(
      ([item, state]) => `${item} ${state === 'lit' ? 'dark' : 'lit'}`,
    );
    const { code, out: marked } = await runCommand(['mark', '-', '--answer', other.join(', ')], {
      files: { '-': JSON.stringify({ question: asking }) },
    });
    expect(code).toBe(0);
    expect(marked).toMatch(/0 of \d+ right|Not right/);
  });

  it.each([
    ['hello', 'q.json is no JSON: in line 1, column 1, "h" can\'t stand.'],
    ['{"question":', 'q.json is no JSON: it ends too early.'],
    ['{}', 'q.json is no question. At question: nothing stands here, and something has to.'],
    [
      '{"question":{"kind":"riddle"}}',
      'q.json is no question. At question.kind: this is none of those there are.',
    ],
    ['[]', 'q.json is no question. At the top: this has to be an object.'],
  ])('says where %s is none', async (text, told) => {
    const { code, err } = await runCommand(['mark', 'q.json'], { files: { 'q.json': text } });
    expect({ code, first: err.split('\n')[0] }).toEqual({ code: 2, first: told });
  });

  it.each([
    ['text that is no JSON', 'hello'],
    ['JSON that is no question', '{"question": 5}'],
    ['a question without an answer', 'QUESTION'],
    ['an answer of another kind', 'OTHER'],
    ['a circuit that is not sound', 'UNSOUND'],
  ])('refuses %s in words', async (_, text) => {
    const { question: asking } = JSON.parse((await ask('--seed', '7', '--kind', 'lamp-states')).out);
    const unsound = structuredClone(asking);
    unsound.circuit.paths[0].steps[0].enter = 'X9';
    const content: Readonly<Record<string, unknown>> = {
      QUESTION: { question: asking },
      OTHER: { question: asking, answer: { kind: 'meter', volts: 3 } },
      UNSOUND: { question: unsound, answer: { kind: 'lamp-states', states: {} } },
    };
    const files = { 'q.json': text in content ? JSON.stringify(content[text]) : text };
    const { code, err } = await runCommand(['mark', 'q.json'], { files });
    expect(code).toBe(2);
    expect(err.length).toBeGreaterThan(10);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

describe('bank check', () => {
  it('finds no mistake in the banks that come with the program', async () => {
    const { code, out, err } = await runCommand(['bank', 'check']);
    expect(err).toBe('');
    expect(out).toMatch(/topics.*no mistakes/);
    expect(code).toBe(0);
  });

  it('tells file, line and reason of each mistake, and ends with 2', async () => {
    const { code, err } = await runCommand(['bank', 'check', 'mine.md'], {
      files: { 'mine.md': '---\nid: Mine!\n---\n# x\n' },
    });
    expect(code).toBe(2);
    expect(err).toMatch(/mine\.md:\d+/);
  });
});
