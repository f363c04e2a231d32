/** Answers that differ from the right one in one place. */
import type { Answer, Question } from '../../shared/question.ts';
import { rightAnswer } from '../../src/questions/index.ts';
import { askQuestion } from '../support/in-english.ts';

export function withOneWrongPart(question: Question): Answer[] {
  const right = rightAnswer(question);
  const { items } = askQuestion(question);
  switch (right.kind) {
    case 'meter':
      return [-1, 1].map((sign) => ({
        kind: 'meter',
        volts: (right.volts ?? 0) + sign * 100 * (question.kind === 'meter' ? question.tolerance : 1),
      }));
    case 'wiring':
      return items[0]!.choices.flatMap((_, choice): Answer[] =>
        choice === right.choice ? [] : [{ kind: 'wiring', choice }],
      );
    default:
      return items.flatMap(({ item, choices }) =>
        choices
          .filter((state) => state !== right.states[item])
          .map((state): Answer => ({ ...right, states: { ...right.states, [item]: state } })),
      );
  }
}
