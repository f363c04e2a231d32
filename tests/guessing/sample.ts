/** Questions as learners get them: from the recipes of our own banks, of all skills and sizes. */
import type { Bank, Recipe } from '../../shared/bank.ts';
import type { Answer, Question, QuestionKind } from '../../shared/question.ts';
import { candidateFor } from '../../src/practice/candidate.ts';
import { FULL_GROWTH } from '../../src/practice/growth.ts';
import { rightAnswer } from '../../src/questions/index.ts';

export interface Sampled {
  readonly skill: string;
  readonly question: Question;
  readonly right: Answer;
}

/** The kinds that a skill's recipes ask. */
const kindsOf = (recipes: readonly Recipe[]): QuestionKind[] => [
  ...new Set(recipes.flatMap(({ kinds }) => kinds)),
];

export const kindsIn = ({ topics }: Bank): QuestionKind[] => [
  ...new Set(topics.flatMap(({ skills }) => skills.flatMap(({ recipes }) => kindsOf(recipes)))),
];

/** `count` questions of each kind, the skills that ask it in turn and sizes from the smallest to the largest. */
export function sampled(bank: Bank, count: number, name: string, kinds = kindsIn(bank)): Sampled[] {
  const skills = bank.topics.flatMap((topic) => topic.skills);
  return kinds.flatMap((kind) => {
    const asking = skills.filter(({ recipes }) => kindsOf(recipes).includes(kind));
    const found: Sampled[] = [];
    for (let number = 0; found.length < count && number < 4 * count; number++) {
      const { id, recipes } = asking[number % asking.length]!;
      const fitting = recipes
        .filter(({ kinds: asked }) => asked.includes(kind))
        .map((recipe) => ({ ...recipe, kinds: [kind] }));
      const grown = Math.floor(number / asking.length) % (FULL_GROWTH + 1);
      const made = candidateFor(fitting, grown, `${name}/${kind}/${number}`);
      if (made) found.push({ skill: id, question: made.question, right: rightAnswer(made.question) });
    }
    return found;
  });
}
