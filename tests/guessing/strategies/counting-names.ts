/** Wiring: counts how often names come among the choices, and takes the one that has most (or least) in common with the others. */
import type { Strategy } from '../seen.ts';

type Pair = readonly [string, string];
type Rank = (pair: Pair, choices: readonly Pair[]) => number;

const deviceOf = (terminal: string): string => terminal.split(':')[0]!;
const legOf = (terminal: string): string => terminal.at(-1)!;
const times = (pair: Pair, choices: readonly Pair[], of: (terminal: string) => string): number =>
  choices.reduce(
    (sum, other) => sum + pair.filter((terminal) => other.some((each) => of(each) === of(terminal))).length,
    0,
  );

const RANKS: readonly Rank[] = [
  (pair, choices) => times(pair, choices, (terminal) => terminal),
  (pair, choices) => times(pair, choices, deviceOf),
  (pair, choices) => times(pair, choices, (terminal) => terminal) + times(pair, choices, deviceOf) / 2,
  (pair, choices) => times(pair, choices, legOf),
  // From a common to a leg, rather than from leg to leg.
  (pair, choices) => (legOf(pair[0]) === '1' ? 10 : 0) + times(pair, choices, (terminal) => terminal),
];

const best = (rank: Rank, sign: number, choices: readonly Pair[]): number => {
  const ranks = choices.map((pair) => sign * rank(pair, choices));
  return ranks.indexOf(Math.max(...ranks));
};

/** Whichever count has done best so far. */
export const countingNames: Strategy = {
  id: 'names',
  learn(kind, cases) {
    if (kind !== 'wiring') return undefined;
    const ways = RANKS.flatMap((rank) => [1, -1].map((sign) => ({ rank, sign })));
    const scores = ways.map(
      ({ rank, sign }) =>
        cases.filter(
          ({ seen, sampled: { right } }) =>
            'choice' in right && best(rank, sign, seen.choices) === right.choice,
        ).length,
    );
    const { rank, sign } = ways[scores.indexOf(Math.max(...scores))]!;
    return (seen) => ({ kind, choice: best(rank, sign, seen.choices) });
  },
};
