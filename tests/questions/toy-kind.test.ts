/** A kind of question that the program hasn't got, added from here alone: what a kind needs is its own files and its lines in the registries. */
import { describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import type { Answer, Question, QuestionKind } from '../../shared/question.ts';

/** Has any relay operated in the end? Its words, its shape and what it does. */
const KIND = 'any-operated';
const toyWords = {
  title: 'Any relay',
  short: 'any relay',
  task: 'Has any relay operated in the end?',
  how: 'Write 1 for yes and 0 for no.',
};

interface Toy {
  readonly kind: typeof KIND;
  readonly circuit: Question['circuit'];
  readonly scenario: Question['scenario'];
  readonly family: string;
}

vi.mock('../../shared/question-kinds.ts', async (original) => {
  const { QUESTION_KINDS } = await original<typeof import('../../shared/question-kinds.ts')>();
  return { QUESTION_KINDS: [...QUESTION_KINDS, KIND] };
});

vi.mock('../../shared/questions/index.ts', async (original) => {
  const { question, answer } = await original<typeof import('../../shared/questions/index.ts')>();
  const { questionBase, states } = await import('../../shared/questions/base.ts');
  const kind = z.literal(KIND);
  return {
    question: z.discriminatedUnion('kind', [...question.options, z.strictObject({ kind, ...questionBase })]),
    answer: z.discriminatedUnion('kind', [...answer.options, z.strictObject({ kind, states })]),
  };
});

vi.mock('../../src/questions/registry.ts', async (original) => {
  const { KINDS } = await original<typeof import('../../src/questions/registry.ts')>();
  const { situationOf } = await import('../../src/questions/ask/situation.ts');
  const anyIn = ({ circuit, scenario }: Toy, solve: import('../../src/questions/solving.ts').Solve) => {
    const end = solve(circuit, scenario);
    return end && (Object.values(end.readings.coils).some(({ operated }) => operated) ? '1' : '0');
  };
  const says = (state: string | undefined) => ({ says: state === '1' ? '1' : '0' }) as const;
  const toy = {
    kind: KIND,
    blank: { kind: KIND, states: {} },
    luck: () => 0.5,
    propose: ({ circuit, scenario, family }: Toy) => ({ kind: KIND, circuit, scenario, family }),
    check: () => [],
    ask: ({ circuit, scenario }: Toy) => ({
      kind: KIND,
      form: 'states',
      situation: situationOf(circuit, scenario),
      besides: [],
      task: { says: 'task' },
      how: { says: 'how' },
      items: [
        { item: 'any', label: { says: 'item', name: 'any' }, choices: [says('1'), says('0')], about: [] },
      ],
      cautions: [],
    }),
    answerBy(question: Toy, solve: import('../../src/questions/solving.ts').Solve) {
      const state = anyIn(question, solve);
      return state && { kind: KIND, states: { any: state } };
    },
    parts: (
      _: Toy,
      { states }: { states: Record<string, string> },
      right: { states: Record<string, string> },
    ) => ({
      parts: [
        {
          item: 'any',
          choices: 2,
          right: says(right.states['any']),
          ...(states['any'] === undefined ? {} : { given: says(states['any']) }),
          correct: states['any'] === right.states['any'],
        },
      ],
      problems: [],
    }),
    secondsExpected: () => 20,
  };
  const all = { ...KINDS, [KIND]: toy };
  return { KINDS: all, kindOf: (kind: QuestionKind) => all[kind] };
});

vi.mock('../../src/questions/explain/explainers.ts', async (original) => {
  const { explainerOf } = await original<typeof import('../../src/questions/explain/explainers.ts')>();
  const toy = {
    explain: () => ({
      decides: [{ item: 'any', said: { says: 'onSite' }, brief: { says: 'onSite' }, about: [], behind: [] }],
      story: [],
    }),
    hint: () => ({ says: 'followPath', item: 'any coil' }),
  };
  return { explainerOf: (kind: string) => (kind === KIND ? toy : explainerOf(kind as QuestionKind)) };
});

vi.mock('../../src/questions/answer/readers.ts', async (original) => {
  const { readerOf } = await original<typeof import('../../src/questions/answer/readers.ts')>();
  const toy = (_: Toy, text: string) => ({ ok: true, value: { kind: KIND, states: { any: text.trim() } } });
  return { readerOf: (kind: string) => (kind === KIND ? toy : readerOf(kind as QuestionKind)) };
});

const core = await import('../../src/questions/index.ts');
const shared = await import('../../shared/question.ts');
const { generate, randomOf } = await import('../../src/generator/index.ts');
const { english } = await import('../../src/words/en/core.ts');
const { keyOf } = await import('../../src/homework/print/key-of.ts');
const { classPapersPdf } = await import('../../src/homework/print/index.ts');
const { qtiFiles } = await import('../../src/homework/index.ts');
const { answerOf, chosenOf } = await import('../../src/web/question/answer.ts');
const { touchableOf } = await import('../../src/web/question/on-drawing.ts');
const { say } = await import('../../src/words/index.ts');

const words = { ...english, kinds: { ...english.kinds, [KIND]: toyWords } } as unknown as typeof english;

function fresh(seed: string): Question {
  const made = generate({ seed, family: 'seal-in', size: 4 });
  if (!made.ok) throw new Error('no circuit was made');
  const question = core.proposeQuestion(made.accepted.draft, [KIND as QuestionKind], randomOf(seed));
  if (!question) throw new Error('no question was made');
  return question;
}

describe('a kind added from outside', () => {
  const questions = Array.from({ length: 12 }, (_, at) => fresh(`toy ${at}`));

  it('is proposed, read, asked, answered, marked and explained', () => {
    const answers = new Set<string>();
    for (const question of questions) {
      expect(shared.question.safeParse(question).success).toBe(true);
      const asked = core.tellQuestion(words, core.askQuestion(question));
      expect(shared.asked.parse(asked)).toMatchObject({
        title: 'Any relay',
        task: toyWords.task,
        form: 'states',
      });
      const right = core.rightAnswer(question);
      expect(shared.answer.safeParse(right).success).toBe(true);
      answers.add(JSON.stringify(right));
      const typed = core.readAnswer(words, question, JSON.stringify(right).includes('"1"') ? ' 1 ' : '0');
      expect(typed).toEqual({ ok: true, value: right });
      const { mark } = core.markAnswer(question, right);
      expect(mark).toMatchObject({ share: 1, correct: true });
      expect(core.markAnswer(question, core.blankAnswer(question)).mark.share).toBe(0);
      const { decides } = core.tellMark(
        words,
        core.markAnswer(question, right),
        core.explain(question),
      ).explanation;
      // What of the faults and losses told changes nothing is told of every kind.
      expect(decides.filter(({ item }) => item !== undefined)).toMatchObject([{ item: 'any' }]);
      const besides = decides.filter(({ item }) => item === undefined);
      for (const { text } of besides) expect(text).toContain('of what was asked');
      expect(say(words.hints, core.hintFor(question))).toContain('any coil');
      expect(core.circuitsTold(question)).toHaveLength(1);
      expect(core.shownWithMark(question).circuit).toBe(question.circuit);
    }
    expect(answers.size).toBe(2);
  });

  it('is answered on the page, by the form in which it is answered', () => {
    for (const question of questions) {
      const { asked } = core.publicQuestion(words, question);
      const right = core.rightAnswer(question);
      expect(answerOf(question.kind, asked, new Map())).toBeUndefined();
      expect(answerOf(question.kind, asked, chosenOf(asked, right))).toEqual(right);
      expect(touchableOf(asked, new Map(), undefined, undefined).size).toBe(1);
    }
  });

  it('is printed with its key, and packed for other systems', async () => {
    const items = questions.map((question) => ({
      skill: 'toy',
      circuit: 'toy',
      marks: 2,
      difficulty: 1,
      secondsExpected: core.secondsExpected(question),
      question,
    }));
    const paper = { set: 'toy', learner: 'toy', attempt: 1, items } as never;
    const key = keyOf(words, paper);
    expect(key.map(({ each }) => each)).toEqual(items.map(() => 'all or nothing'));
    for (const [at, { answer }] of key.entries()) {
      const right = core.rightAnswer(questions[at]!) as Extract<Answer, { states: object }>;
      expect(answer).toBe(`any ${right.states['any']}`);
    }
    const set = { id: 'toy', title: 'Toys', places: [] } as never;
    const pdf = await classPapersPdf({
      words,
      set,
      className: 'Toys',
      closes: 'today',
      made: new Date(0),
      papers: [{ name: 'Ada', code: 'K7M2QP9DX', paper }],
    });
    expect(pdf.length).toBeGreaterThan(1000);
    const files = qtiFiles({ words, version: '3.0', id: 'toy', title: 'Toys', items });
    expect(Object.keys(files).filter((name) => name.startsWith('items/'))).toHaveLength(items.length);
  });
});
