/** A marked paper as answers for the memory: homework counts towards what a learner holds as practice does. */
import type { Paper, PaperMark, SavedAnswer } from '../../../shared/homework.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import { gradeOf } from '../../memory/index.ts';
import { partsCounted } from '../../practice/index.ts';

/**
 * One record for each item that was answered at all; what was left out says nothing of the memory, since time may have run
 * out. The record has the mark that followed from the answer: an override is a matter of marks.
 *
 * @param idOf - the record's id for an item; the same each time, so that the answer counts once
 * @param at - when the paper was submitted or closed
 */
export function recordsOf(
  paper: Paper,
  { items }: PaperMark,
  answers: ReadonlyMap<number, SavedAnswer>,
  at: number,
  idOf: (item: number) => string,
): readonly AnswerRecord[] {
  return paper.items.flatMap((item, index): AnswerRecord[] => {
    const saved = answers.get(index);
    const marked = items[index];
    if (!saved || !marked || marked.answered === 'none') return [];
    const { skill, circuit, question, secondsExpected } = item;
    const attempt = {
      share: marked.mark.share,
      parts: partsCounted(question, marked.mark),
      help: { hint: saved.hint, explanation: false },
      secondsUsed: saved.secondsUsed,
      secondsExpected,
    };
    return [
      {
        id: idOf(index),
        learner: paper.learner,
        at,
        skill,
        circuit,
        question,
        answer: saved.answer,
        mark: marked.mark,
        attempt,
        grade: gradeOf(attempt).grade,
      },
    ];
  });
}
