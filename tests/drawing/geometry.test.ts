import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textProfile } from '../../src/drawing/text/profile.ts';
import { anyCircuit } from '../circuit/arbitrary-circuit.ts';
import { expectSound, expectSoundEverywhere } from './geometry-check.ts';
import { diceOf, randomCircuit } from './random-circuit.ts';

const DICED = 2400;
const ARBITRARY = 800;

const circuitOf = (seed: number) => {
  const dice = diceOf(seed);
  return randomCircuit(dice, {
    paths: 1 + dice.below(seed % 11 === 0 ? 25 : 9),
    sheets: 1 + dice.below(3),
    odd: seed % 2 ? 0.05 : 0.3,
  });
};

describe('a drawing read back from its lines, dots, symbols and marks is the circuit, and a draughtsman would sign it', () => {
  it(`for ${DICED} random circuits of every device kind, on a phone, on a screen and on A4`, () => {
    for (let seed = 0; seed < DICED; seed++) expectSoundEverywhere(circuitOf(seed), `seed ${seed}`);
  });

  it('for 1000 of them in a terminal', () => {
    for (let seed = 0; seed < 1000; seed++)
      expectSound(circuitOf(seed), textProfile(seed % 3 === 0 ? 60 : 80), `seed ${seed}`);
  });

  it(`for ${ARBITRARY} arbitrary circuits, whatever the notation can write`, () => {
    fc.assert(
      fc.property(anyCircuit, (circuit) => {
        const scenes = expectSoundEverywhere(circuit, 'arbitrary');
        expect(scenes).toHaveLength(3);
      }),
      { numRuns: ARBITRARY },
    );
  });
});
