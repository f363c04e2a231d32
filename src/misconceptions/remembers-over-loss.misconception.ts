import type { Act } from '../../shared/scenario.ts';
import type { Misconception } from './types.ts';

/** What an act takes away or brings back: a supply, or all that lies behind a breaker, fuse or isolator. */
function fedBy(act: Act): string | undefined {
  switch (act.kind) {
    case 'fail':
    case 'restore':
      return act.supply;
    case 'open':
    case 'close':
      return act.device;
    default:
      return undefined;
  }
}

/** Acts that take a supply away until it comes back, and those that bring it back; a loss that lasts is not among them. */
function lossesMadeGood(acts: readonly Act[]): ReadonlySet<Act> {
  const found = new Set<Act>();
  const lost = new Map<string, Act>();
  for (const act of acts) {
    const what = fedBy(act);
    if (what === undefined) continue;
    const before = lost.get(what);
    if (act.kind === 'fail' || act.kind === 'open') {
      if (!before) lost.set(what, act);
    } else if (before) {
      found.add(before).add(act);
      lost.delete(what);
    }
  }
  return found;
}

export const remembersOverLoss: Misconception = {
  id: 'remembers-over-loss',
  // As if the supply had never been away: what was done meanwhile was done with it.
  changeScenario: (scenario) => {
    const over = lossesMadeGood(scenario.acts);
    return over.size === 0 ? undefined : { ...scenario, acts: scenario.acts.filter((act) => !over.has(act)) };
  },
};
