/** What every family has to keep. A new family is a file in src/generator/families and its line in index.ts. */
import { beforeAll, describe, expect, it } from 'vitest';
import { circuit as circuitSchema } from '../../shared/circuit.ts';
import { scenario as scenarioSchema } from '../../shared/scenario.ts';
import { checkRules, unsound } from '../../src/circuit/index.ts';
import { type Family, type Generated, generate, randomOf } from '../../src/generator/index.ts';
import { solve } from '../../src/solver/index.ts';

const SEEDS = 300;
type Made = Extract<Generated, { ok: true }>;
const sizesOf = ({ size }: Family): number[] =>
  Array.from({ length: size.max - size.min + 1 }, (_, index) => size.min + index);

export function familyContract(family: Family): void {
  describe(`family ${family.id}`, () => {
    const sizes = sizesOf(family);
    let made: readonly Generated[] = [];
    let accepted: readonly Made[] = [];
    beforeAll(() => {
      made = Array.from({ length: SEEDS }, (_, index) =>
        generate({ seed: `contract-${index}`, family: family.id, size: sizes[index % sizes.length]! }),
      );
      accepted = made.filter((generated) => generated.ok);
    });

    it(`comes to an accepted circuit from every one of ${SEEDS} seeds`, () => {
      const failed = made.flatMap((generated, index) => (generated.ok ? [] : [{ index, ...generated }]));
      expect(failed).toEqual([]);
    });

    it('makes sound circuits that keep the drawing rules', () => {
      for (const { accepted: found } of accepted) {
        const { circuit, scenario } = found.draft;
        expect(circuitSchema.safeParse(circuit).error).toBeUndefined();
        expect(scenarioSchema.safeParse(scenario).error).toBeUndefined();
        expect(unsound(circuit)).toEqual([]);
        expect(checkRules(circuit)).toEqual([]);
      }
    });

    it('has one outcome, which the accepted picture shows', () => {
      for (const { accepted: found } of accepted.slice(0, 100)) {
        const { draft, after } = found;
        const { solution } = solve(draft.circuit, draft.scenario);
        const allowed = draft.ends === 'steady' ? ['steady'] : ['steady', 'keeps-switching'];
        expect(allowed).toContain(solution.outcome.kind);
        expect(draft.lamps.map((id) => solution.lamps[id])).toEqual(after.lamps);
        expect(draft.inputs.map((id) => solution.inputs[id])).toEqual(after.inputs);
        if (solution.outcome.kind === 'steady')
          expect(draft.relays.map((id) => (solution.coils[id]!.operated ? 'operated' : 'rest'))).toEqual(
            after.relays,
          );
      }
    });

    it('labels every lamp in words', () => {
      for (const { accepted: found } of accepted)
        for (const device of found.draft.circuit.devices)
          if (device.kind === 'lamp') expect(device.text, device.name).toMatch(/[a-z]/);
    });

    it('makes the same draft from the same seed', () => {
      const size = family.size.max;
      const again = () => family.draft(randomOf('again'), { size });
      expect(again()).toEqual(again());
    });

    it('grows with its size', () => {
      const mean = (size: number): number => {
        const counts = Array.from({ length: 40 }, (_, index) => {
          const { circuit } = family.draft(randomOf(`grow-${index}`), { size });
          return circuit.devices.length + circuit.paths.length;
        });
        return counts.reduce((sum, count) => sum + count, 0) / counts.length;
      };
      const means = sizes.map(mean);
      means.slice(1).forEach((value, index) => {
        expect(value, `size ${sizes[index + 1]}`).toBeGreaterThan(means[index]! * 0.98);
      });
      if (sizes.length > 1) expect(means.at(-1)!).toBeGreaterThan(means[0]! * 1.2);
    });
  });
}
