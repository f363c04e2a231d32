/** Fresh questions of every family for the tests. */
import type { Question, QuestionKind } from '../../shared/question.ts';
import { families, generate, randomOf } from '../../src/generator/index.ts';
import { proposeQuestion } from '../../src/questions/index.ts';

/** Questions of a kind, from all families in turn, until there are `count`. The same ones every time. */
export function freshQuestions(kind: QuestionKind, count: number, mostTries = 12 * count): Question[] {
  const questions: Question[] = [];
  for (let number = 0; questions.length < count && number < mostTries; number++) {
    const family = families[number % families.length]!;
    const size = family.size.min + (Math.floor(number / families.length) % 4);
    const seed = `${kind} ${number}`;
    const made = generate({ seed, family: family.id, size });
    const question = made.ok ? proposeQuestion(made.accepted.draft, [kind], randomOf(seed)) : undefined;
    if (question) questions.push({ ...question, seed });
  }
  return questions;
}
