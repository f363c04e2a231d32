import { losingAlso } from './feeding.ts';
import type { Misconception } from './types.ts';

export const oneSupply: Misconception = {
  id: 'one-supply',
  changeScenario: (scenario, circuit) => {
    const others = (concerned: readonly string[]): readonly string[] =>
      circuit.supplies.map(({ name }) => name).filter((name) => !concerned.includes(name));
    return losingAlso(scenario, circuit, others, true);
  },
};
