import type { Circuit } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { actsOn } from '../../circuit/index.ts';

const sameSubject = (one: Act, other: Act): boolean =>
  'device' in one &&
  'device' in other &&
  one.device === other.device &&
  (!('point' in one) || ('point' in other && one.point === other.point));

/** What can be done next: of acts that undo one another, the one that changes something after those done so far. */
export function liveActs(circuit: Circuit, done: readonly Act[]): Act[] {
  const turned = (act: Act): boolean => {
    const last = done.findLast((before) => sameSubject(before, act));
    return JSON.stringify(last) === JSON.stringify(act);
  };
  const possible = circuit.devices.flatMap((device): Act[] => {
    const acts = actsOn(device);
    // Positions, from each of which every other can be reached, and not pairs.
    if (acts[0]?.kind === 'turn')
      return acts.filter(
        (act, index) => !turned(act) && (index > 0 || done.some((before) => sameSubject(before, act))),
      );
    const pairs = acts.length / 2;
    return Array.from({ length: pairs }, (_, pair) => {
      const first = acts[2 * pair]!;
      return turned(first) ? acts[2 * pair + 1]! : first;
    });
  });
  return [...possible, { kind: 'wait', seconds: 1 }, { kind: 'wait', seconds: 5 }];
}
