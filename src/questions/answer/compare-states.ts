import type { Problem } from '../../../shared/problem.ts';
import type { AnswerSaid, StateName } from '../../words/index.ts';
import { entriesOf, type StatesAnswer, type StatesQuestion } from '../entries.ts';
import type { Part, Parts } from '../kind.ts';
import { questionProblem } from '../problem-codes.ts';
import { stateNamed } from './state-words.ts';

/** More strange entries than this are not listed one by one. */
const MOST_PROBLEMS = 20;

/** Part by part. Something that is no state counts as an answer, and a wrong one. */
export function compareStates(question: StatesQuestion, answer: StatesAnswer, right: StatesAnswer): Parts {
  const entries = entriesOf(question);
  const given = new Map(Object.entries(answer.states));
  const problems: Problem[] = [];
  const parts = entries.map(({ key, item, kind, choices }): Part => {
    const raw = given.get(key);
    given.delete(key);
    const truth = right.states[key]! as StateName;
    const part = { item: key, right: { says: truth } as AnswerSaid, choices: choices.length };
    if (raw === undefined || raw.trim() === '') return { ...part, correct: false };
    const state = stateNamed(kind, raw);
    if (state === undefined)
      problems.push(questionProblem({ says: 'answer-impossible-state', word: raw, item, choices }));
    const said = (state ? { says: state } : { says: 'written', text: raw.slice(0, 80) }) as AnswerSaid;
    return { ...part, given: said, correct: state === truth };
  });
  const asked = entries.map(({ key }) => key);
  for (const key of given.keys())
    problems.push(questionProblem({ says: 'answer-unknown-item.key', key, asked }));
  return { parts, problems: problems.slice(0, MOST_PROBLEMS) };
}
