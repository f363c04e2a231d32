/** What a question that stands there needs of the engine: a hint, its mark, the circuit as it stands in the end. */
import { shownState } from '../../drawing/index.ts';
import { bothLeft, ideasTold, judge, wantsLesson } from '../../practice/index.ts';
import { explain, hintFor, loadsAsked, shownWithMark, tellMark } from '../../questions/index.ts';
import { solve } from '../../solver/index.ts';
import { type AnsweringWords, say } from '../../words/index.ts';
import { checkCircuit, checkQuestion } from './guarded.ts';
import type { Handlers } from './messages.ts';
import { meterAt } from './meter-place.ts';
import type { Opened } from './opened.ts';
import { draw } from './sheets.ts';
import { pointsOf } from './shown-circuit.ts';

export type AnsweredRequest = 'hint' | 'judge' | 'draw';

export function answeredHandlers(held: Opened, words: AnsweringWords): Handlers<AnsweredRequest> {
  return {
    hint: ({ task }) => {
      checkQuestion(held.guarded, task.question);
      return say(words.hints, hintFor(task.question));
    },
    judge: ({ task, given, earlier, view }) => {
      checkQuestion(held.guarded, task.question);
      const judged = judge(task, given, held.memory.recalls);
      const { question } = task;
      const { circuit, scenario } = shownWithMark(question);
      const asked = loadsAsked(
        question,
        judged.mark.parts.map(({ item }) => item),
      );
      const state = shownState(solve(circuit, scenario), asked);
      const records = [...earlier.filter(({ id }) => id !== given.id), judged.record];
      const ideas = ideasTold(records);
      const left = bothLeft(ideas);
      if (left) held.ideasLeft.set(task.skill, left);
      else held.ideasLeft.delete(task.skill);
      const mark = tellMark({ ...held.words, ...words }, judged, explain(question), ideas);
      return {
        judged,
        mark,
        goesWrong: wantsLesson(records),
        circuit,
        scenario,
        drawn: draw(held.words, circuit, view, state, meterAt(pointsOf(question))),
      };
    },
    draw: ({ circuit, scenario, view }) => {
      if (scenario) checkCircuit(held.guarded, circuit);
      return draw(held.words, circuit, view, scenario ? shownState(solve(circuit, scenario)) : undefined);
    },
  };
}
