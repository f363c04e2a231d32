import { losingAlso } from './feeding.ts';
import type { Misconception } from './types.ts';

export const lineSideDead: Misconception = {
  id: 'line-side-dead',
  idea: 'You took the incoming side of an open isolator or breaker for dead.',
  advice:
    'Opening it cuts off what comes after it. The terminals on the side of the supply stay live until the supply itself is off.',
  source: 'common practice, no source',
  changeScenario: (scenario, circuit) => losingAlso(scenario, circuit, (concerned) => concerned, false),
};
