import type { Problem } from '../../shared/problem.ts';
import { problemIn } from './answer/read-states.ts';
import { entriesOf, type StatesQuestion, statesBy } from './entries.ts';
import { certain, type Solver } from './solving.ts';

/** Problems of a scenario that can end in more than one way. */
export function uncertain(question: Pick<StatesQuestion, 'circuit' | 'scenario'>, solver: Solver): Problem[] {
  const machine = solver.machine(question.circuit, question.scenario);
  return certain(machine, question.scenario)
    ? []
    : [
        problemIn(
          'question-not-certain',
          'The scenario has no single outcome.',
          'Two relays race, or something never comes to rest: change the circuit or the acts.',
        ),
      ];
}

/** What is asked that isn't there, or twice; and what is right but not among the possible answers. */
export function checkStates(question: StatesQuestion, solver: Solver): Problem[] {
  const problems: Problem[] = [];
  const keys =
    question.kind === 'sequence'
      ? question.asked.map(({ after, item }) => `${after} ${item}`)
      : [...question.asked];
  const acts = question.scenario.acts.length;
  if (question.kind === 'sequence')
    for (const { after, item } of question.asked)
      if (after > acts)
        problems.push(
          problemIn('question-no-such-step', `${item} is asked after ${after} acts.`, `There are ${acts}.`),
        );
  if (new Set(keys).size < keys.length)
    problems.push(problemIn('question-asked-twice', 'The same thing is asked twice.', 'Ask it once.'));
  const { nodeOf } = solver.machine(question.circuit, question.scenario).plan;
  const entries = entriesOf(question);
  const there = new Set(
    entries.filter(({ kind, item }) => kind !== 'terminal' || nodeOf.has(item)).map(({ key }) => key),
  );
  for (const key of new Set(keys))
    if (!there.has(key))
      problems.push(
        problemIn(
          'question-unknown-item',
          `${key} can't be asked about in this circuit.`,
          'Ask for something that it has.',
        ),
      );
  if (problems.length > 0) return problems;
  const unclear = uncertain(question, solver);
  if (unclear.length > 0) return unclear;
  const right = statesBy(question, solver.solve)!;
  return entries.flatMap(({ key, kind, choices }) => {
    const state = right[key]!;
    if (choices.includes(state)) return [];
    return kind === 'terminal'
      ? [problemIn('question-between', `${key} has only a part of its voltage.`, 'Ask for another terminal.')]
      : [
          problemIn(
            'question-not-offered',
            `${key} is ${state}, which is not among the possible answers.`,
            'Ask for something else.',
          ),
        ];
  });
}
