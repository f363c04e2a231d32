/** What families make keeps the rules of practice by how it is made: the generator doesn't look at them. */
import { describe, expect, it } from 'vitest';
import { checkRules } from '../../src/circuit/index.ts';
import { families, free, generate } from '../../src/generator/index.ts';
import { rulesOfPractice, solve } from '../../src/solver/index.ts';

const SEEDS = 6;

describe('the circuits of every size', () => {
  it.each([...families, free].map(({ id, size }) => [id, size] as const))(
    'of %s keep the rules of practice',
    (family, { min, max }) => {
      const broken: string[] = [];
      for (let size = min; size <= max; size++)
        for (let seed = 0; seed < SEEDS; seed++) {
          const made = generate({ family, size, seed: `practice ${seed}` });
          if (!made.ok) throw new Error(`${family} ${size} made nothing`);
          const { circuit } = made.accepted.draft;
          for (const { said } of checkRules(circuit, rulesOfPractice))
            broken.push(`${size} ${circuit.title}: ${JSON.stringify(said)}`);
        }
      expect(broken).toEqual([]);
    },
  );
});

describe('words of a contact, a lamp and an input on two supplies', () => {
  it('are of what is so: the lamp that the fault lights is named for the fault, whichever contact feeds the relay', () => {
    let breaks = 0;
    for (let seed = 0; seed < 60; seed++) {
      const made = generate({ family: 'two-supplies', size: 3, seed: `words ${seed}` });
      if (!made.ok) continue;
      const { circuit } = made.accepted.draft;
      const lit = (acts: Parameters<typeof solve>[1]['acts']): Set<string> => {
        const { lamps } = solve(circuit, { start: 'live', faults: [], acts }).solution;
        return new Set(
          circuit.devices.flatMap(({ name, text }) => (lamps[name] === 'lit' ? [text ?? ''] : [])),
        );
      };
      for (const device of circuit.devices) {
        if (!/^-B/.test(device.name) || !('contacts' in device)) continue;
        const [first] = device.contacts;
        const kind = first && 'form' in first && first.form === 'break' ? 'break' : 'make';
        if (!circuit.devices.some(({ kind: of, text }) => of === 'lamp' && text === device.text)) continue;
        expect(lit([]), `${circuit.title} ${device.text}`).not.toContain(device.text);
        expect(lit([{ kind, device: device.name }]), `${circuit.title} ${device.text}`).toContain(
          device.text,
        );
        if (kind === 'break') breaks++;
      }
    }
    expect(breaks).toBeGreaterThan(10);
  });
});
