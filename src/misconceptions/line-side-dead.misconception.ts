import { losingAlso } from './feeding.ts';
import type { Misconception } from './types.ts';

export const lineSideDead: Misconception = {
  id: 'line-side-dead',
  changeScenario: (scenario, circuit) => losingAlso(scenario, circuit, (concerned) => concerned, false),
};
