import { describe, expect, it } from 'vitest';
import { randomOf } from '../../src/generator/random.ts';
import { deadEnds } from '../../src/solver/dead-ends.ts';
import { machineOf, type Plan, planOf, solveNetwork } from '../../src/solver/index.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { button, lamp, relay, wired } from '../support/hops.ts';
import { standAt } from '../support/standing.ts';
import { randomFaults, randomStanding, tangle } from '../support/tangle.ts';

const contacts = (plan: Plan, chosen: (index: number) => boolean): string[] =>
  plan.switches.flatMap(({ device, from, to }, index) => (chosen(index) ? [`${device}:${from}-${to}`] : []));

describe('contacts that lead nowhere', () => {
  it('are the unused legs and poles, and whatever only leads to such', () => {
    const plan = planOf(
      wired({
        devices: [
          button('-S1'),
          relay('-K1', 2),
          relay('-K2', 2),
          lamp('-H1'),
          { kind: 'fuse', name: '-F1', poles: 1 },
        ],
        paths: [
          // What feeds stays, whatever it leads to.
          'A:L+ -F1:1',
          'A:L+ -S1:13-14 -K1:A1-A2 A:L-',
          // The second relay's contact hangs on the first one's, and nothing on it.
          'A:L+ -K1:11-14 -K2:11',
          'A:L+ -K1:21-24 -H1:X1-X2 A:L-',
        ],
      }),
    );
    const idle = deadEnds(plan);
    expect(contacts(plan, (index) => idle[index] === 0)).toEqual(['-S1:13-14', '-K1:21-24', '-F1:1-2']);
  });

  it('carry nothing: as if they were all open, every load has what it has, in 6 states each of 400 random circuits', () => {
    let left = 0;
    const wrong: string[] = [];
    for (let number = 0; number < drawn(400); number++) {
      const random = randomOf(`dead ends ${number}`);
      const circuit = tangle(random, { feeds: number % 3 });
      const machine = machineOf(planOf(circuit, randomFaults(random, circuit, number % 2)));
      const idle = deadEnds(machine.plan);
      left += idle.filter(Boolean).length;
      const without = machineOf({
        ...machine.plan,
        switches: machine.plan.switches.map((part, index) =>
          idle[index] ? { ...part, fixed: 'open' as const } : part,
        ),
      });
      for (let stand = 0; stand < 6; stand++) {
        const { at, supplyOn } = standAt(machine, randomStanding(random, circuit));
        const [whole, cut] = [machine, without].map((each) => solveNetwork(each, at, supplyOn));
        machine.plan.loads.forEach(({ id, a, b }) => {
          const [one, other] = [whole!, cut!].map(({ volts, reference }) =>
            reference[a] === reference[b] ? volts.map((along) => along[a]! - along[b]!) : volts.map(() => 0),
          );
          if (one!.some((volts, axis) => Math.abs(volts - other![axis]!) > 1e-6))
            wrong.push(`${number} ${id}`);
        });
      }
    }
    expect(wrong).toEqual([]);
    expect(left).toBeGreaterThan(atLeast(400));
  });
});
