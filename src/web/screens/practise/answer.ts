import type { Answer, Asked, Question } from '../../../../shared/question.ts';

/** The word under which a meter that shows nothing is answered. */
export const NOTHING = 'nothing';

/** Reads a number as people write one: a comma or a point, with or without the unit. */
export function voltsOf(text: string): number | undefined {
  const [, number] = text.match(/^\s*([+-]?(?:\d{1,9}(?:[.,]\d{0,9})?|[.,]\d{1,9}))\s*V?\s*$/i) ?? [];
  return number === undefined ? undefined : Number(number.replace(',', '.'));
}

/** What has been chosen, as an answer; undefined while it can't be one yet. */
export function answerOf(
  question: Question,
  asked: Asked,
  chosen: ReadonlyMap<string, string>,
): Answer | undefined {
  switch (question.kind) {
    case 'meter': {
      const text = chosen.get('volts') ?? '';
      if (text === NOTHING) return { kind: 'meter', volts: null };
      const volts = voltsOf(text);
      return volts === undefined ? undefined : { kind: 'meter', volts };
    }
    case 'wiring': {
      const [item] = asked.items;
      const choice = item ? item.values.indexOf(chosen.get(item.item) ?? '') : -1;
      return choice < 0 ? undefined : { kind: 'wiring', choice };
    }
    default: {
      const states = Object.fromEntries(
        asked.items.flatMap(({ item }) => (chosen.has(item) ? [[item, chosen.get(item)!]] : [])),
      );
      return Object.keys(states).length === asked.items.length ? { kind: question.kind, states } : undefined;
    }
  }
}
