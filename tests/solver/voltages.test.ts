/**
 * Voltages against nodal equations solved the plainest way (tests/support/naive-network.ts), which shares no code with the solver:
 * quicker than the independent voltmeter of tests/published, so that more circuits are met by each change.
 */
import { describe, expect, it } from 'vitest';
import type { Supply } from '../../shared/circuit.ts';
import { randomOf } from '../../src/generator/random.ts';
import { machineOf, planOf } from '../../src/solver/index.ts';
import { nodeVolts } from '../support/naive-network.ts';
import { standAt } from '../support/standing.ts';
import { isShorted, randomFaults, randomStanding, tangle } from '../support/tangle.ts';
import { netsOf, wiringOf } from '../support/wiring.ts';

const PARTS = ['direct', 're', 'im'] as const;

/** Loads that have another voltage than the equations say, of so many circuits without a short circuit. */
function wrongLoads(
  label: string,
  wanted: number,
  supplies?: (index: number) => readonly Supply[],
): string[] {
  const wrong: string[] = [];
  for (let index = 0, found = 0; found < wanted; index++) {
    const seed = `${label} ${index}`;
    const random = randomOf(seed);
    const circuit = tangle(random, { feeds: index % 3, ...(supplies ? { supplies: supplies(index) } : {}) });
    const faults = randomFaults(random, circuit, index % 4);
    const standing = randomStanding(random, circuit);
    const failed = random.chance(0.2) ? [random.pick(circuit.supplies).name] : [];
    const wiring = wiringOf(circuit, faults, standing, failed);
    if (isShorted(wiring)) continue;
    found++;
    const machine = machineOf(planOf(circuit, faults));
    const { volts } = standAt(machine, standing, failed);
    const { axes } = machine;
    const ours = [axes.direct, axes.inPhase, axes.quadrature].map((axis) =>
      axis < 0 ? undefined : volts[axis]!,
    );
    // Two ends have a voltage between them only where something leads from the one to the other.
    const leads = netsOf({
      ...wiring,
      joined: [
        ...wiring.joined,
        ...wiring.resistors.map(({ from, to }) => [from, to] as const),
        ...wiring.sources.map(({ plus, minus }) => [plus, minus] as const),
        ...wiring.earths.map((earth) => [earth, wiring.earths[0]!] as const),
      ],
    });
    PARTS.forEach((part, at) => {
      const all = nodeVolts(wiring, part);
      machine.plan.loads.forEach(({ device, from, to, role }, load) => {
        if (role === 'dirt') return;
        const [a, b] = [`${device}:${from}`, `${device}:${to}`];
        const right = leads(a) === leads(b) ? all.get(a)! - all.get(b)! : 0;
        const own = ours[at]?.[load] ?? 0;
        if (Math.abs(own - right) > 1e-3 * Math.abs(right) + 2e-2)
          wrong.push(`${seed}: ${a} to ${b}, ${part}: ${own}, by the equations ${right}`);
      });
    });
  }
  return wrong;
}

describe('voltages are those of the nodal equations', () => {
  it('in 100 random circuits with up to three faults', () => {
    expect(wrongLoads('equations', 100)).toEqual([]);
  });

  it('in 60 circuits of direct, alternating and three-phase supplies, earthed or not', () => {
    const mixed = (index: number): readonly Supply[] => {
      const random = randomOf(`supplies ${index}`);
      return [...'ABC'].slice(0, random.int(2, 3)).map((name) => ({
        name,
        volts: random.pick([12, 24, 110]),
        current: random.pick(['DC', 'AC', '3AC'] as const),
        earthed: random.chance(0.5),
      }));
    };
    expect(wrongLoads('mixed', 60, mixed)).toEqual([]);
  });
});
