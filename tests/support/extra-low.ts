/** Which supplies the poles of each relay of a circuit hang on, whatever is closed. */
import type { Circuit } from '../../shared/circuit.ts';
import { JoinedSets } from '../../src/graph/index.ts';
import { planOf } from '../../src/solver/index.ts';

/** Extra-low voltage: up to 50 V AC or 120 V DC (IEC 61140, from memory). */
const isExtraLow = (volts: number, current: string): boolean => volts <= (current === 'DC' ? 120 : 50);

/** Relays with a pole at extra-low voltage beside one at more. */
export function mixedRelays(circuit: Circuit): string[] {
  const plan = planOf(circuit);
  const sets = new JoinedSets<string>();
  for (const [a, b] of plan.joins) sets.join(`${a}`, `${b}`);
  for (const { a, b } of plan.switches) sets.join(`${a}`, `${b}`);
  return plan.mechanisms.flatMap(({ device, drive }, index) => {
    if (drive === 'feed' || drive === 'act') return [];
    const levels = new Set(
      plan.switches
        .filter(({ mechanism, main }) => mechanism === index && !main)
        .flatMap(({ a }) =>
          plan.supplies
            .filter(({ poles }) => poles.slice(0, -1).some(({ node }) => sets.together(`${node}`, `${a}`)))
            .map(({ supply }) => isExtraLow(supply.volts, supply.current)),
        ),
    );
    return levels.size > 1 ? [device] : [];
  });
}
