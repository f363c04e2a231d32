import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { familyOf, randomOf } from '../../src/generator/index.ts';
import { solve } from '../../src/solver/index.ts';

/** How lamps and coils stand from the beginning to the end. */
const courseOf = (circuit: Circuit, scenario: Scenario): string[] =>
  Array.from({ length: scenario.acts.length + 1 }, (_, done) => {
    const acts = scenario.acts.slice(0, done);
    const { lamps, coils, loads } = solve(circuit, { ...scenario, acts }).solution;
    return JSON.stringify([
      lamps,
      loads,
      Object.values(coils).map(({ operated, energised }) => [operated, energised]),
    ]);
  });

describe('what is wrong with a seal', () => {
  it('shows somewhere in what is done: nobody is asked about a fault that changes nothing', () => {
    const { draft, size } = familyOf('seal-in')!;
    const kinds = new Set<string>();
    for (let seed = 0; seed < 60; seed++) {
      const made = draft(randomOf(`wrong ${seed}`), { size: 1 + (seed % size.max) });
      for (const scenario of [made.scenario, ...made.others]) {
        for (const { kind } of scenario.faults) kinds.add(kind);
        if (scenario.faults.length === 0) continue;
        const sound = courseOf(made.circuit, { ...scenario, faults: [] });
        expect(courseOf(made.circuit, scenario), JSON.stringify(scenario)).not.toEqual(sound);
      }
    }
    expect([...kinds].sort()).toEqual(['loose', 'open', 'welded']);
  });
});
