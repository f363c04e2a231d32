/** Acts as a question says them: of a button that isn't let go before anything is asked, that it is kept pressed. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { actSaid, deviceOf, traitsOf } from '../../circuit/index.ts';
import type { ActSaid } from '../../words/index.ts';

/** What comes back by itself when it is let go. */
function isMomentary(circuit: Circuit, name: string): boolean {
  const device = deviceOf(circuit, name);
  return device !== undefined && traitsOf(device).momentary === true;
}

/**
 * @param eachAsked - whether something is asked after each act, and not in the end alone
 */
export function actsSaid(acts: readonly Act[], circuit: Circuit, eachAsked = false): ActSaid[] {
  return acts.map((act, index) => {
    const said = actSaid(act, circuit);
    if (said.says !== 'press' || act.kind !== 'press' || !isMomentary(circuit, act.device)) return said;
    const next = acts[index + 1];
    const letGo = next?.kind === 'release' && next.device === act.device;
    return letGo && !eachAsked ? said : { ...said, says: 'pressAndKeep' };
  });
}
