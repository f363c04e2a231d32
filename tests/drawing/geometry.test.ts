import { describe, expect, it } from 'vitest';
import { layOut, PROFILES } from '../../src/drawing/index.ts';
import type { Profile } from '../../src/drawing/layout/profile.ts';
import { textProfile } from '../../src/drawing/text/profile.ts';
import { diceOf, randomCircuit } from './random-circuit.ts';
import { conductorsDrawn, conductorsWritten, faultsOf } from './read-back.ts';

const MEDIA: readonly Profile[] = [PROFILES.phone, PROFILES.screen, PROFILES.a4, textProfile(80)];
const EACH = 1300;

const circuitOf = (seed: number) => {
  const dice = diceOf(seed);
  return randomCircuit(dice, {
    paths: 1 + dice.below(seed % 7 === 0 ? 25 : 9),
    sheets: 1 + dice.below(3),
    odd: seed % 2 ? 0.05 : 0.3,
  });
};

describe.each(MEDIA)('drawings of 1300 random circuits for $name', (profile) => {
  const offset = MEDIA.indexOf(profile) * EACH;

  it('read back from lines, dots, symbols and marks alone are the circuits that went in, and a draughtsman would sign them', () => {
    for (let seed = offset; seed < offset + EACH; seed++) {
      const circuit = circuitOf(seed);
      const scene = layOut(circuit, profile);
      expect(conductorsDrawn(scene, circuit), `seed ${seed}`).toEqual(conductorsWritten(circuit));
      expect(faultsOf(scene), `seed ${seed}`).toEqual([]);
    }
  });
});
