import type { PublicQuestion, Question } from '../../../../../shared/question.ts';

const pairOf = (names: readonly string[]): [string, string] => [names[0] ?? '', names[1] ?? ''];

/**
 * A question as it was sent before it is answered, as far as drawing it and answering on the drawing want to know. What
 * must not be known yet isn't in it: nothing is wanted of a wiring, and a meter has no tolerance.
 */
export function asQuestion({ kind, circuit, scenario, asked }: PublicQuestion): Question {
  const base = { circuit, scenario, family: 'free' };
  const items = asked.items.map(({ item }) => item);
  switch (kind) {
    case 'wiring': {
      const [item] = asked.items;
      return {
        kind,
        ...base,
        ends: pairOf(item?.about ?? []),
        choices: (item?.values ?? []).map((value) => pairOf(value.split(' '))),
        wanted: [],
      };
    }
    case 'meter':
      return { kind, ...base, points: pairOf(asked.items[0]?.about ?? []), tolerance: 1 };
    case 'sequence':
      return {
        kind,
        ...base,
        asked: items.map((text) => {
          const [after, item] = pairOf(text.split(' '));
          return { after: Number(after), item };
        }),
      };
    default:
      return { kind, ...base, asked: items };
  }
}
