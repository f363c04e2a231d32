/** What putting a question needs of the engine; it is there from the beginning. */
import type { Asked } from '../../../shared/question.ts';
import { courseOf, nextTask, type Task } from '../../practice/index.ts';
import { askQuestion, tellQuestion } from '../../questions/index.ts';
import type { Handlers, Prepared, View } from './messages.ts';
import type { Opened } from './opened.ts';
import { draw, type MeterOn } from './sheets.ts';
import { circuitAsked, pointsIn } from './shown-circuit.ts';

export type PracticeRequest = 'open' | 'remember' | 'guard' | 'next' | 'show';

/**
 * What draws a meter is fetched when a question first has one. Undefined where it can't be: the question says in words where the
 * meter is.
 */
async function meterIn(asked: Asked): Promise<MeterOn | undefined> {
  const points = pointsIn(asked);
  if (!points) return undefined;
  const fetched = await import('./meter-place.ts').catch(() => undefined);
  return fetched?.meterAt(points);
}

export function practiceHandlers(held: Opened): Handlers<PracticeRequest> {
  const preparedFor = async (task: Task, view: View): Promise<Prepared> => {
    const asked = tellQuestion(held.words, askQuestion(task.question));
    return {
      task,
      asked,
      drawn: draw(
        held.words,
        circuitAsked(task.question.circuit, asked),
        view,
        undefined,
        await meterIn(asked),
      ),
      skillTitle: held.course.skills.get(task.skill)?.title ?? task.skill,
    };
  };
  return {
    open: ({ bank }) => {
      const made = courseOf(bank);
      if (!made.ok) throw new Error(made.problems.map(({ code }) => code).join(' '));
      held.course = made.value;
      return { skills: made.value.skills.size };
    },
    remember: ({ answers, ahead, anew }) => {
      if (anew) held.memory.forget();
      return { answers: held.memory.add(answers, ahead) };
    },
    guard: ({ circuits }) => {
      held.guarded = new Set(circuits);
      return null;
    },
    next: async ({ view, ...wanted }) => {
      const { course, memory, guarded, ideasLeft } = held;
      const seen = guarded.size === 0 ? memory.seen : new Set([...memory.seen, ...guarded]);
      const next = nextTask({
        course,
        recalls: memory.recalls,
        seen,
        ideasLeft: (skill) => ideasLeft.get(skill),
        ...wanted,
      });
      if (!next.ok)
        return {
          nothing:
            next.reason === 'nothing'
              ? held.words.practice.nothingToDo
              : held.words.practice.noNewCircuit(next.skill ?? ''),
        };
      return preparedFor(next.task, view);
    },
    show: ({ task, view }) => preparedFor(task, view),
  };
}
