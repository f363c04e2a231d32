/** What has been chosen on the page, and the answer that it is: both ways, by how the question is answered. */
import type { Answer, Asked, QuestionKind } from '../../../shared/question.ts';

/** By item: the state or the pair chosen, or what was typed for a reading. */
export type Chosen = ReadonlyMap<string, string>;

/** The word under which a meter that shows nothing is answered. */
export const NOTHING = 'nothing';

/** Reads a number as people write one: a comma or a point, with or without the unit. */
export function voltsOf(text: string): number | undefined {
  const [, number] = text.match(/^\s*([+-]?(?:\d{1,9}(?:[.,]\d{0,9})?|[.,]\d{1,9}))\s*V?\s*$/i) ?? [];
  return number === undefined ? undefined : Number(number.replace(',', '.'));
}

const readingOf = (text: string): number | null | undefined => (text === NOTHING ? null : voltsOf(text));

/** As far as it has been answered. */
export function answerSoFar(kind: QuestionKind, { form, items }: Asked, chosen: Chosen): Answer {
  const [first] = items;
  const of = (item: string): string => chosen.get(item) ?? '';
  switch (form) {
    case 'reading': {
      const volts = readingOf(of(first!.item));
      return { kind, ...(volts === undefined ? {} : { volts }) } as Answer;
    }
    case 'choice': {
      const choice = first!.values.indexOf(of(first!.item));
      return { kind, ...(choice < 0 ? {} : { choice }) } as Answer;
    }
    case 'states': {
      const states = items.flatMap(({ item }) => (of(item) === '' ? [] : [[item, of(item)] as const]));
      return { kind, states: Object.fromEntries(states) } as Answer;
    }
  }
}

/** How much of a question is answered. */
export function answeredOf({ items }: Asked, chosen: Chosen): 'all' | 'part' | 'none' {
  const given = items.filter(({ item, values }) => {
    const state = chosen.get(item) ?? '';
    return values.length > 0 ? values.includes(state) : readingOf(state) !== undefined;
  }).length;
  return given === 0 ? 'none' : given === items.length ? 'all' : 'part';
}

/** What has been chosen, as an answer; undefined while it can't be one yet. */
export const answerOf = (kind: QuestionKind, asked: Asked, chosen: Chosen): Answer | undefined =>
  answeredOf(asked, chosen) === 'all' ? answerSoFar(kind, asked, chosen) : undefined;

/** An answer as it stands chosen. */
export function chosenOf({ items }: Asked, answer: Answer): Chosen {
  const [first] = items;
  if ('states' in answer) return new Map(Object.entries(answer.states));
  if ('choice' in answer) {
    const pair = answer.choice === undefined ? undefined : first?.values[answer.choice];
    return first && pair !== undefined ? new Map([[first.item, pair]]) : new Map();
  }
  if (!first || !('volts' in answer) || answer.volts === undefined) return new Map();
  return new Map([[first.item, answer.volts === null ? NOTHING : String(answer.volts)]]);
}
