import { losingAlso } from './feeding.ts';
import type { Misconception } from './types.ts';

export const oneSupply: Misconception = {
  id: 'one-supply',
  idea: 'You took everything to be on one supply, and let all of it go dead together.',
  advice:
    'The poles of a relay are separate from one another and may belong to different supplies. Trace each load back to its own supply before calling it dead.',
  source: 'common practice, no source',
  changeScenario: (scenario, circuit) => {
    const others = (concerned: readonly string[]): readonly string[] =>
      circuit.supplies.map(({ name }) => name).filter((name) => !concerned.includes(name));
    return losingAlso(scenario, circuit, others, true);
  },
};
