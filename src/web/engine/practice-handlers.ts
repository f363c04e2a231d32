/** What practising needs of the engine; it is there from the beginning. */
import type { Question } from '../../../shared/question.ts';
import { shownState } from '../../drawing/index.ts';
import { courseOf, judge, nextTask, placing, type Task } from '../../practice/index.ts';
import { askQuestion, hintFor } from '../../questions/index.ts';
import { solve } from '../../solver/index.ts';
import { checkCircuit, checkQuestion } from './guarded.ts';
import type { Handlers, Prepared, View } from './messages.ts';
import type { Opened } from './opened.ts';
import { draw } from './sheets.ts';
import { circuitAsked, circuitMarked } from './shown-circuit.ts';

/** What is asked, as loads to pick out: `2 -H1` of a sequence is -H1. */
export const loadsAsked = (question: Question, items: readonly string[]): string[] => [
  ...new Set(
    question.kind === 'wiring'
      ? question.wanted.map(({ load }) => load)
      : items.map((item) => item.split(' ').at(-1)!),
  ),
];

/** Where a question puts its meter. */
export const pointsOf = (question: Question): readonly [string, string] | undefined =>
  question.kind === 'meter' ? question.points : undefined;

export type PracticeRequest =
  | 'open'
  | 'remember'
  | 'guard'
  | 'next'
  | 'show'
  | 'hint'
  | 'judge'
  | 'placing'
  | 'draw';

export function practiceHandlers(held: Opened): Handlers<PracticeRequest> {
  const preparedFor = (task: Task, view: View): Prepared => ({
    task,
    asked: askQuestion(task.question),
    drawn: draw(circuitAsked(task.question), view, undefined, pointsOf(task.question)),
    skillTitle: held.course.skills.get(task.skill)?.title ?? task.skill,
  });
  return {
    open: ({ bank }) => {
      const made = courseOf(bank);
      if (!made.ok) throw new Error(made.problems.map(({ message }) => message).join(' '));
      held.course = made.value;
      return { skills: made.value.skills.size };
    },
    remember: ({ answers }) => ({ answers: held.memory.add(answers) }),
    guard: ({ circuits }) => {
      held.guarded = new Set(circuits);
      return null;
    },
    next: ({ view, ...wanted }) => {
      const { course, memory, guarded } = held;
      const seen = guarded.size === 0 ? memory.seen : new Set([...memory.seen, ...guarded]);
      const next = nextTask({ course, recalls: memory.recalls, seen, ...wanted });
      if (!next.ok)
        return {
          nothing:
            next.reason === 'nothing'
              ? 'Nothing needs practice now.'
              : `No new circuit was found for ${next.skill}.`,
        };
      return preparedFor(next.task, view);
    },
    show: ({ task, view }) => preparedFor(task, view),
    hint: ({ task }) => {
      checkQuestion(held.guarded, task.question);
      return hintFor(task.question);
    },
    judge: ({ task, given, view }) => {
      checkQuestion(held.guarded, task.question);
      const judged = judge(task, given, held.memory.recalls);
      const { question } = task;
      const { circuit, scenario } = circuitMarked(question);
      const asked = loadsAsked(
        question,
        judged.mark.parts.map(({ item }) => item),
      );
      const state = shownState(solve(circuit, scenario), asked);
      return { judged, circuit, scenario, drawn: draw(circuit, view, state, pointsOf(question)) };
    },
    placing: ({ answers, most }) => placing(held.course.graph, answers, most),
    draw: ({ circuit, scenario, view }) => {
      if (scenario) checkCircuit(held.guarded, circuit);
      return draw(circuit, view, scenario ? shownState(solve(circuit, scenario)) : undefined);
    },
  };
}
