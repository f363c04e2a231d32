import { describe, expect, it } from 'vitest';
import { bank as bankSchema, type Topic } from '../../shared/bank.ts';
import { lessonFor, wantsLesson } from '../../src/practice/index.ts';
import { answerWith, DAY, MORNING } from '../support/answers.ts';
import { ownBank } from '../support/own-bank.ts';

const recipes = [
  { families: ['make-only'], kinds: ['lamp-states' as const], size: [1, 2] as [number, number] },
];
const section = (title: string | null, ...texts: string[]) => ({
  title,
  depth: 2 as const,
  parts: texts.map((markdown) => ({ kind: 'text' as const, markdown })),
});
const bankWith = (lesson: Topic['lesson'], named?: string) =>
  bankSchema.parse({
    topics: [
      {
        id: 'first',
        title: 'First',
        summary: 'A bank for tests.',
        order: 1,
        skills: [{ id: 'make', title: 'Make', needs: [], recipes, ...(named ? { lesson: named } : {}) }],
        lesson,
        circuits: [],
        questions: [],
      },
    ],
  });

describe('the part of a lesson that helps', () => {
  const lesson = [section(null), section('At rest', 'It is drawn at rest.'), section('A make', 'It closes.')];

  it('is the section that the skill names, and the first with text where it names none', () => {
    expect(lessonFor(bankWith(lesson, 'A make'), 'make')).toMatchObject({
      topic: { id: 'first' },
      section: { title: 'A make' },
    });
    expect(lessonFor(bankWith(lesson), 'make')).toMatchObject({ section: { title: 'At rest' } });
  });

  it('is none of a skill that there is not, or of a topic without a lesson', () => {
    expect(lessonFor(bankWith(lesson), 'juggling')).toBeUndefined();
    expect(lessonFor(bankWith([]), 'make')).toBeUndefined();
  });

  it('is named by every skill of the banks that come with the program, and has text', () => {
    const bank = ownBank();
    for (const { skills } of bank.topics)
      for (const skill of skills) {
        expect(skill.lesson, skill.id).toBeDefined();
        expect(lessonFor(bank, skill.id)!.section.title).toBe(skill.lesson);
      }
  });
});

describe('a skill that goes wrong', () => {
  const answers = (...shares: (0 | 0.5 | 1)[]) =>
    shares.map((share, number) => answerWith({ id: `a${number}`, at: MORNING + number * DAY, share }));

  it('wants its lesson after two lost answers in a row, and after each more', () => {
    expect(wantsLesson([])).toBe(false);
    expect(wantsLesson(answers(0))).toBe(false);
    expect(wantsLesson(answers(0, 0))).toBe(true);
    expect(wantsLesson(answers(1, 0.5, 0))).toBe(true);
    expect(wantsLesson(answers(0, 0, 0))).toBe(true);
    expect(wantsLesson(answers(0, 1, 0))).toBe(false);
    expect(wantsLesson(answers(0, 0, 1))).toBe(false);
  });

  it('is so whatever was answered to other skills in between', () => {
    const other = answerWith({ id: 'other', at: MORNING, skill: 'another' });
    const [one, two] = answers(0, 0);
    expect(wantsLesson([one!, other, two!])).toBe(true);
    expect(wantsLesson([one!, two!, other])).toBe(false);
  });
});
