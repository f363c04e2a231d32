/**
 * A lamp that says that all is well never lights because a wire of a contact in the field is off (the closed-circuit principle for
 * what is monitored; common practice, no source). Solved for generated drawings as they are meant.
 */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Act, Fault } from '../../shared/scenario.ts';
import { anatomyOf, traitsOf } from '../../src/circuit/index.ts';
import { families, generate } from '../../src/generator/index.ts';
import { solve } from '../../src/solver/index.ts';
import { drawn } from '../support/drawn.ts';

const COUNT = drawn(12);

/** Green lamps that light with a conductor off at a field contact, and wouldn't with it on. */
function falselyWell(circuit: Circuit): string[] {
  const green = circuit.devices.filter((device) => device.kind === 'lamp' && device.colour === 'green');
  const lampsWith = (acts: readonly Act[], faults: readonly Fault[]) =>
    solve(circuit, { start: 'live', faults: [...faults], acts: [...acts] }).solution.lamps;
  const field = circuit.devices.filter((device) => traitsOf(device).movedBy === 'plant');
  return field.flatMap((device) =>
    anatomyOf(device).contacts.flatMap(({ from }) =>
      [[], [{ kind: 'make' as const, device: device.name }]].flatMap((acts) => {
        const sound = lampsWith(acts, []);
        const off = lampsWith(acts, [{ kind: 'loose', at: `${device.name}:${from}` }]);
        return green.flatMap(({ name, text }) =>
          off[name] === 'lit' && sound[name] !== 'lit' ? [`${name} "${text}" over ${device.name}`] : [],
        );
      }),
    ),
  );
}

describe('a lamp that says that all is well', () => {
  it.each(families.map(({ id, size }) => ({ id, size })))(
    'stays dark with a wire of the field off: $id',
    ({ id, size: { min, max } }) => {
      let green = 0;
      for (let number = 0; number < COUNT; number++) {
        const size = min + (number % (max - min + 1));
        const made = generate({ family: id, size, seed: `wire off ${number}` });
        if (!made.ok) continue;
        const { circuit } = made.accepted.draft;
        if (circuit.devices.some((device) => device.kind === 'lamp' && device.colour === 'green')) green++;
        expect(falselyWell(circuit), `size ${size}, seed "wire off ${number}"`).toEqual([]);
      }
      // Some families have none that could.
      if (['status-pair', 'make-only', 'two-supplies', 'flashing', 'lamp-test'].includes(id))
        expect(green).toBeGreaterThan(0);
    },
  );
});
