/** A solution's outcome in words, without a full stop. */
import type { Outcome } from '../../shared/solution.ts';
import type { CommandWords } from '../words/commands.ts';

export function outcomeText(outcome: Outcome, { outcome: said }: CommandWords): string {
  switch (outcome.kind) {
    case 'steady':
      return said.steady;
    case 'keeps-switching':
      return said['keeps-switching'](outcome);
    case 'race':
      return said.race(outcome);
    case 'undecided':
      return said.undecided(outcome);
    case 'protection-tripped':
      return said['protection-tripped'](outcome);
  }
}
