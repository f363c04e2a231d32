/** The answers to a paper as whoever marks it by hand needs them: what is right, how much each part is worth, and why. */
import type { Paper, PaperItem } from '../../../shared/homework.ts';
import type { Answer, ExplanationStep, Question } from '../../../shared/question.ts';
import { askQuestion, markAnswer, rightAnswer } from '../../questions/index.ts';

export interface KeyItem {
  /** From 1. */
  readonly number: number;
  readonly marks: number;
  /** The right answer in words, one that `readAnswer` reads. */
  readonly answer: string;
  /** What else counts as that: the number of a choice, how far a reading may be off. */
  readonly note: string;
  /** What a right part earns and a wrong one costs. */
  readonly each: string;
  /** From the explanation, what tells most, in the order told. */
  readonly why: string;
}

const listed = (states: Readonly<Record<string, string>>): string =>
  Object.entries(states)
    .map(([item, state]) => `${item} ${state}`)
    .join(', ');

/** `after 1: -H1 lit, -H3 dark; after 2: …`. */
function byStep(states: Readonly<Record<string, string>>): string {
  const steps = new Map<string, string[]>();
  for (const [key, state] of Object.entries(states)) {
    const [after = '', item = ''] = key.split(' ');
    steps.set(after, [...(steps.get(after) ?? []), `${item} ${state}`]);
  }
  return [...steps]
    .map(([after, list]) => `${after === '0' ? 'start' : `after ${after}`}: ${list.join(', ')}`)
    .join('; ');
}

function inWords(question: Question, right: Answer, told: string): Pick<KeyItem, 'answer' | 'note'> {
  switch (right.kind) {
    case 'sequence':
      return { answer: byStep(right.states), note: '' };
    case 'wiring':
      return { answer: told, note: `choice ${(right.choice ?? 0) + 1}` };
    case 'meter': {
      const near = question.kind === 'meter' ? Number(question.tolerance.toFixed(2)) : 0;
      const note =
        right.volts === null ? 'or 0 V' : `within ${near} V${right.volts === 0 ? ', or nothing' : ''}`;
      return { answer: told, note };
    }
    default:
      return { answer: listed(right.states), note: '' };
  }
}

const hundredths = (value: number): string => String(Math.round(value * 100) / 100);

/** The rule of `markAnswer` in figures: right minus wrong, so that guessing gains nothing. */
function worth(choices: readonly number[], marks: number): string {
  if (choices.length === 1) return 'all or nothing';
  const part = marks / choices.length;
  const costs = [...new Set(choices)]
    .sort((one, other) => one - other)
    .map((count) => {
      const cost = hundredths(part / (count - 1));
      return new Set(choices).size > 1 ? `${cost} of ${count}` : cost;
    });
  return `each right +${hundredths(part)}, wrong −${costs.join(' or ')}`;
}

/** What says nothing new: the acts, which stand in the question, and what has been said. */
const SAID = /^[0-9]+\. |as said above\.$|^Connected to |^On site /;

function whyOf({ kind }: Question, steps: readonly ExplanationStep[]): string {
  const telling = steps.map(({ text }) => text).filter((text) => !SAID.test(text));
  // A meter's reading is explained by where it ends.
  return (kind === 'meter' ? telling.slice(-2) : telling).join(' ');
}

function keyItem({ question, marks }: PaperItem, index: number): KeyItem {
  const right = rightAnswer(question);
  const { parts, explanation } = markAnswer(question, right);
  const choices = askQuestion(question).items.map((item) => item.choices.length);
  return {
    number: index + 1,
    marks,
    ...inWords(question, right, parts[0]!.right),
    each: worth(choices, marks),
    why: whyOf(question, explanation),
  };
}

export const keyOf = ({ items }: Paper): readonly KeyItem[] => items.map(keyItem);
