/** Marks and explanations in the words of a language. Apart from the questions: the page puts one before it needs these. */
import type { MarkPart, ToldExplanation, ToldMark, ToldStep, WrongIdea } from '../../shared/question.ts';
import { type AnswerSaid, say, type Words } from '../words/index.ts';
import { type ProblemSayings, tellProblems } from '../words/problems.ts';
import { reasonsTold } from './reasons-told.ts';
import type { Decision, Explanation, ExplanationStep, Marking } from './said.ts';

/** The values of answers that have some. */
const VALUES: { readonly [says in AnswerSaid['says']]?: Readonly<Record<string, 'number' | 'string'>> } = {
  volts: { volts: 'number' },
  pair: { first: 'string', second: 'string' },
  choice: { number: 'number' },
  written: { text: 'string' },
};

/** Whether these words can say it: what was kept may be of a later version, or made up by whoever sent it. */
const isKnown = (words: Pick<Words, 'answers'>, answer: MarkPart['right']): answer is AnswerSaid =>
  Object.hasOwn(words.answers, answer.says) &&
  Object.entries(VALUES[answer.says as AnswerSaid['says']] ?? {}).every(
    ([name, type]) => typeof answer[name] === type,
  );

/** Something answered, in words. One that these words can't say has but its name. */
export const tellAnswer = (words: Pick<Words, 'answers'>, answer: MarkPart['right']): string =>
  isKnown(words, answer) ? say(words.answers, answer) : answer.says;

/** A wrong idea and what to do instead. One that only an earlier version knew has but its name. */
export function tellIdea({ ideas }: Pick<Words, 'ideas'>, id: string): WrongIdea {
  const idea = Object.hasOwn(ideas, id) ? ideas[id as keyof typeof ideas] : { idea: id, advice: '' };
  return { id, ...idea };
}

const tellSteps = (words: Pick<Words, 'explaining'>, steps: readonly ExplanationStep[]): ToldStep[] =>
  steps.map(({ said, about }) => ({ text: say(words.explaining, said), about: [...about] }));

export const tellPart = (
  words: Pick<Words, 'answers'>,
  { given, right, ...part }: MarkPart,
): ToldMark['parts'][number] => ({
  ...part,
  ...(given ? { given: tellAnswer(words, given) } : {}),
  right: tellAnswer(words, right),
});

/** Whether two answers are the same. */
const same = (one: AnswerSaid, other: MarkPart['given']): boolean =>
  other !== undefined && JSON.stringify(one) === JSON.stringify(other);

/**
 * Why the right answer is right. Of what was answered rightly only what decides is told; of the rest the whole, and what would
 * have come of what was answered instead. Nothing is told twice.
 */
export function tellExplanation(
  words: Pick<Words, 'explaining'>,
  { decides, story }: Explanation,
  parts: readonly MarkPart[],
): ToldExplanation {
  const partOf = ({ item }: Decision): MarkPart | undefined => parts.find((part) => part.item === item);
  const reasons = reasonsTold(decides, (decision) => partOf(decision)?.correct !== true);
  return {
    decides: decides.map((decision) => {
      const { item, said, brief, about, instead = [] } = decision;
      const part = partOf(decision);
      const told = { ...(item === undefined ? {} : { item }), about: [...about] };
      if (part?.correct) return { ...told, text: say(words.explaining, brief), behind: [] };
      const answered = instead.flatMap(({ given, step }) => (same(given, part?.given) ? [step] : []));
      const text = say(words.explaining, said);
      return { ...told, text, behind: tellSteps(words, [...answered, ...(reasons.get(decision) ?? [])]) };
    }),
    story: tellSteps(words, story),
  };
}

/** An answer that more ideas explain speaks for none of them: who is told of six is told of none. */
const MOST_IDEAS = 2;

/**
 * A mark with its explanation in words.
 *
 * @param ideas - those to tell; without, those that the answer by itself speaks for
 */
export function tellMark(
  words: Pick<Words, 'answers' | 'ideas' | 'explaining'> & { readonly problems: ProblemSayings },
  { mark, problems }: Marking,
  explanation: Explanation,
  ideas: readonly string[] = mark.misconceptions.length > MOST_IDEAS ? [] : mark.misconceptions,
): ToldMark {
  const { share, correct, parts } = mark;
  return {
    share,
    correct,
    parts: parts.map((part) => tellPart(words, part)),
    misconceptions: ideas.map((id) => tellIdea(words, id)),
    explanation: tellExplanation(words, explanation, parts),
    problems: tellProblems(words, problems),
  };
}
