/** `asked: -H1 after 0, -H1 after 2` and `answer: -H1 dark after 0, -H1 lit after 2`. */

import type { Circuit } from '../../../../shared/circuit.ts';
import type { AnswerOf, QuestionOf } from '../../../../shared/question.ts';
import type { Scenario } from '../../../../shared/scenario.ts';
import { askableIn } from '../state-words.ts';
import { plainItem, readAskedStates } from './states.ts';
import type { KindReader } from './types.ts';

/** How several things stand after the last act, as a question with its answer: what a drawing is said to show. */
export const standingAtEnd = (
  circuit: Circuit,
  scenario: Scenario,
  items: readonly string[],
  states: Readonly<Record<string, string>>,
): { question: QuestionOf<'sequence'>; answer: AnswerOf<'sequence'> } => ({
  question: {
    kind: 'sequence',
    circuit,
    scenario,
    family: 'fixed',
    asked: items.map((item) => ({ after: scenario.acts.length, item })),
  },
  answer: { kind: 'sequence', states: { ...states } },
});

export const sequenceReader: KindReader = {
  kind: 'sequence',
  keys: ['asked'],
  read(input) {
    const { base, report } = input;
    const acts = base.scenario.acts.length;
    const plain = plainItem(
      askableIn(base.circuit, ['lamp', 'load', 'relay', 'input']),
      'lampRelayOrInput',
      report,
    );
    const read = readAskedStates(input, (text, piece) => {
      const match = /^(\S+)\s+after\s+(\d{1,3})$/.exec(text);
      const after = Number(match?.[2]);
      if (!match || after > acts) {
        report.add(
          match ? { says: 'bank-unknown-item.acts', acts } : { says: 'bank-unknown-item.after', item: text },
          piece.position,
        );
        return undefined;
      }
      const item = plain(match[1]!, piece);
      return item && { ...item, key: `${after} ${item.item}`, after };
    });
    return (
      read && {
        question: {
          kind: 'sequence',
          ...base,
          asked: read.asked.map(({ item, after = 0 }) => ({ after, item })),
        },
        answer: { kind: 'sequence', states: read.states },
        answered: read.answered,
      }
    );
  },
};
