/** The answers to a paper as whoever marks it by hand needs them: what is right, how much each part is worth, and why. */
import type { Paper, PaperItem } from '../../../shared/homework.ts';
import type { Answer, Question } from '../../../shared/question.ts';
import {
  askQuestion,
  type Explanation,
  explain,
  markAnswer,
  rightAnswer,
  tellAnswer,
  tellExplanation,
} from '../../questions/index.ts';
import { type AnswerSaid, say, type Words } from '../../words/index.ts';

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
  /** What decides, part by part. */
  readonly why: string;
}

type States = Readonly<Record<string, string>>;

const standing = (words: Words, item: string, state: string): string =>
  words.paper.key.standing({ item, state: say(words.answers, { says: state } as AnswerSaid) });

const listed = (words: Words, states: States): string =>
  Object.entries(states)
    .map(([item, state]) => standing(words, item, state))
    .join(', ');

/** `after 1: -H1 lit, -H3 dark; after 2: …`. */
function byStep(words: Words, states: States): string {
  const steps = new Map<string, string[]>();
  for (const [key, state] of Object.entries(states)) {
    const [after = '', item = ''] = key.split(' ');
    steps.set(after, [...(steps.get(after) ?? []), standing(words, item, state)]);
  }
  return [...steps]
    .map(([after, list]) => words.paper.key.step({ after: Number(after), list: list.join(', ') }))
    .join('; ');
}

/** How far a reading may be off, where one is asked. */
const toleranceOf = (question: Question): number =>
  'tolerance' in question ? Number(question.tolerance.toFixed(2)) : 0;

function inWords(
  words: Words,
  question: Question,
  right: Answer,
  told: string,
): Pick<KeyItem, 'answer' | 'note'> {
  const { key } = words.paper;
  if ('states' in right) {
    const steps = Object.keys(right.states).some((item) => item.includes(' '));
    return { answer: (steps ? byStep : listed)(words, right.states), note: '' };
  }
  if ('choice' in right) return { answer: told, note: key.choice((right.choice ?? 0) + 1) };
  const volts = 'volts' in right ? (right.volts ?? null) : null;
  const near = toleranceOf(question);
  const note = volts === null ? key.orZero : volts === 0 ? key.withinOrNothing(near) : key.within(near);
  return { answer: told, note };
}

const hundredths = (value: number): string => String(Math.round(value * 100) / 100);

/** The rule of `markAnswer` in figures: right minus wrong, so that guessing gains nothing. */
function worth({ paper: { key } }: Words, choices: readonly number[], marks: number): string {
  if (choices.length === 1) return key.allOrNothing;
  const part = marks / choices.length;
  const counts = [...new Set(choices)].sort((one, other) => one - other);
  return key.each({
    right: hundredths(part),
    costs: counts.map((of) => ({
      cost: hundredths(part / (of - 1)),
      ...(counts.length > 1 ? { of } : {}),
    })),
  });
}

/** What the right answer itself says, and the question. */
const SAID: readonly string[] = ['connectedTo', 'onSite'];

/** What decides, part by part, as it is told to somebody who answered nothing. */
function whyOf(words: Words, explanation: Explanation): string {
  return tellExplanation(words, explanation, [])
    .decides.flatMap(({ text, behind }, index) => [
      ...(SAID.includes(explanation.decides[index]!.said.says) ? [] : [text]),
      ...behind.map((step) => step.text),
    ])
    .join(' ');
}

function keyItem(words: Words, { question, marks }: PaperItem, index: number): KeyItem {
  const right = rightAnswer(question);
  const { parts } = markAnswer(question, right).mark;
  const { items } = askQuestion(question);
  const choices = items.map((item) => item.choices.length);
  return {
    number: index + 1,
    marks,
    ...inWords(words, question, right, tellAnswer(words, parts[0]!.right)),
    each: worth(words, choices, marks),
    why: whyOf(words, explain(question)),
  };
}

export const keyOf = (words: Words, { items }: Paper): readonly KeyItem[] =>
  items.map((item, index) => keyItem(words, item, index));
