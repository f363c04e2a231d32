/** Whatever is right most often: one state for each sort of thing, one choice, one reading. */
import type { Answer } from '../../../shared/question.ts';
import { answered, type Strategy } from '../seen.ts';

/** The commonest of some texts; of equally common ones the first. */
export function commonest(texts: readonly string[]): string | undefined {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

const sortOf = (values: readonly string[]): string => values.slice(0, 2).join();

export const constant: Strategy = {
  id: 'constant',
  learn(kind, cases) {
    if (kind === 'wiring') {
      const choice = Number(
        commonest(cases.map(({ sampled: { right } }) => String('choice' in right && right.choice))),
      );
      return (seen) => ({ kind, choice: Math.min(choice, seen.choices.length - 1) });
    }
    if (kind === 'meter') return undefined;
    const states = new Map<string, string[]>();
    for (const { seen, sampled } of cases)
      for (const { item, values } of seen.items)
        states.set(sortOf(values), [...(states.get(sortOf(values)) ?? []), rightState(sampled.right, item)]);
    const best = new Map([...states].map(([sort, all]) => [sort, commonest(all)!]));
    return (seen) => answered(seen, ({ values }) => best.get(sortOf(values)) ?? values[0]!);
  },
};

export const rightState = (right: Answer, item: string): string =>
  'states' in right ? right.states[item]! : '';
