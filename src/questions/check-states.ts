import type { Problem } from '../../shared/problem.ts';
import { askedOf, entriesOf, type StatesQuestion, statesBy } from './entries.ts';
import { questionProblem } from './problem-codes.ts';
import { certain, type Solver } from './solving.ts';

/** Problems of a scenario that can end in more than one way. */
export function uncertain(question: Pick<StatesQuestion, 'circuit' | 'scenario'>, solver: Solver): Problem[] {
  const machine = solver.machine(question.circuit, question.scenario);
  return certain(machine, question.scenario) ? [] : [questionProblem({ says: 'question-not-certain' })];
}

/** What is asked that isn't there, or twice; and what is right but not among the possible answers. */
export function checkStates(question: StatesQuestion, solver: Solver): Problem[] {
  const problems: Problem[] = [];
  const acts = question.scenario.acts.length;
  const asked = askedOf(question);
  const keys = asked.map(({ key }) => key);
  for (const { after, item } of asked)
    if (after > acts) problems.push(questionProblem({ says: 'question-no-such-step', item, after, acts }));
  if (new Set(keys).size < keys.length) problems.push(questionProblem({ says: 'question-asked-twice' }));
  const { nodeOf } = solver.machine(question.circuit, question.scenario).plan;
  const entries = entriesOf(question);
  const there = new Set(
    entries.filter(({ kind, item }) => kind !== 'terminal' || nodeOf.has(item)).map(({ key }) => key),
  );
  for (const key of new Set(keys))
    if (!there.has(key)) problems.push(questionProblem({ says: 'question-unknown-item', item: key }));
  if (problems.length > 0) return problems;
  const unclear = uncertain(question, solver);
  if (unclear.length > 0) return unclear;
  const right = statesBy(question, solver.solve)!;
  return entries.flatMap(({ key, kind, choices }) => {
    const state = right[key]!;
    if (choices.includes(state)) return [];
    return [
      questionProblem(
        kind === 'terminal'
          ? { says: 'question-between', item: key }
          : { says: 'question-not-offered', item: key, state },
      ),
    ];
  });
}
