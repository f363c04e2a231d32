/** A solution's outcome in words, without a full stop. */
import type { Outcome } from '../../shared/solution.ts';

const list = (names: readonly string[]): string => (names.length === 0 ? 'nothing' : names.join(', '));

/** What a short circuit has put out, where that isn't the outcome itself. */
const besides = (out: { devices: readonly string[]; supplies: readonly string[] } | undefined): string => {
  if (!out) return '';
  const opened = out.devices.length > 0 ? `; a short circuit opened ${list(out.devices)}` : '';
  const lost = out.supplies.length > 0 ? `; a short circuit put out supply ${list(out.supplies)}` : '';
  return opened + lost;
};

export function outcomeText(outcome: Outcome): string {
  switch (outcome.kind) {
    case 'steady':
      return 'steady';
    case 'keeps-switching':
      return `keeps switching: ${list(outcome.devices)} never ${outcome.devices.length === 1 ? 'rests' : 'rest'}${besides(outcome.out)}`;
    case 'race':
      return `a race: which of ${list(outcome.devices)} is faster decides between ${outcome.ways} ways it can end; shown is one of them${besides(outcome.out)}`;
    case 'undecided':
      return `not decided: there are more orders of operation, or more events, than can be tried; what is shown need not be what happens${besides(outcome.out)}`;
    case 'protection-tripped': {
      const { devices, supplies } = outcome;
      const lost = supplies.length > 0 ? `supply ${list(supplies)} is lost, which nothing protects` : '';
      if (devices.length === 0) return `a short circuit: ${lost}`;
      return `a short circuit: ${list(devices)} opened${lost && `, and ${lost}`}`;
    }
  }
}
