/** What is chosen on the page and the answer that it is, both ways; an answer may be given in part. */
import type { Answer, Asked, Question } from '../../../../../shared/question.ts';
import { NOTHING, voltsOf } from '../../practise/answer.ts';

export type Chosen = ReadonlyMap<string, string>;

/** As far as it has been answered. */
export function answerSoFar(question: Question, { items }: Asked, chosen: Chosen): Answer {
  switch (question.kind) {
    case 'meter': {
      const text = chosen.get('volts') ?? '';
      const volts = text === NOTHING ? null : voltsOf(text);
      return volts === undefined ? { kind: 'meter' } : { kind: 'meter', volts };
    }
    case 'wiring': {
      const choice = items[0]?.values.indexOf(chosen.get(items[0].item) ?? '') ?? -1;
      return choice < 0 ? { kind: 'wiring' } : { kind: 'wiring', choice };
    }
    default:
      return {
        kind: question.kind,
        states: Object.fromEntries(
          items.flatMap(({ item }) => {
            const state = chosen.get(item);
            return state ? [[item, state]] : [];
          }),
        ),
      };
  }
}

/** An answer as it stands chosen. */
export function chosenOf({ items }: Asked, answer: Answer): Chosen {
  switch (answer.kind) {
    case 'meter':
      if (answer.volts === undefined) return new Map();
      return new Map([['volts', answer.volts === null ? NOTHING : String(answer.volts)]]);
    case 'wiring': {
      const [item] = items;
      const text = answer.choice === undefined ? undefined : item?.values[answer.choice];
      return item && text !== undefined ? new Map([[item.item, text]]) : new Map();
    }
    default:
      return new Map(Object.entries(answer.states));
  }
}

/** How much of a question is answered. */
export function answeredOf({ items }: Asked, chosen: Chosen): 'all' | 'part' | 'none' {
  const given = items.filter(({ item, values }) => {
    const state = chosen.get(item) ?? '';
    return values.length > 0 ? values.includes(state) : state === NOTHING || voltsOf(state) !== undefined;
  }).length;
  return given === 0 ? 'none' : given === items.length ? 'all' : 'part';
}
