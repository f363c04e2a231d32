/** Predictions on fresh circuits, beside what the changed plan gives when it is compiled afresh. */
import { describe, expect, it } from 'vitest';
import { families, generate } from '../../src/generator/index.ts';
import { predictAll, viewOf } from '../../src/misconceptions/index.ts';
import { machineOf, planOf, play, readState } from '../../src/solver/index.ts';

describe('a prediction', () => {
  it('is what its changed plan gives, on fresh circuits of every family, with a machine that has run before', () => {
    let compared = 0;
    for (const { id: family } of families) {
      const made = generate({ seed: 'afresh', family, size: 4 });
      if (!made.ok) continue;
      const { circuit, scenario } = made.accepted.draft;
      const shared = machineOf(planOf(circuit, scenario.faults));
      play(shared, scenario);
      for (const { misconception, machine, state } of predictAll(circuit, scenario, shared)) {
        const view = viewOf(misconception, circuit, scenario)!;
        const afresh = machineOf(view.plan);
        const about = `${family}: ${misconception.id}`;
        expect(readState(machine, state), about).toEqual(
          readState(afresh, play(afresh, view.scenario).state),
        );
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(3 * families.length);
  });
});
