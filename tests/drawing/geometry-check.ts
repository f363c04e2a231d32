/** What every drawing has to keep, whatever it is of: it says its circuit, and a draughtsman would sign it. */
import { expect } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { writeCircuit } from '../../src/circuit/index.ts';
import { PROFILES, type Scene, type Width } from '../../src/drawing/index.ts';
import type { Profile } from '../../src/drawing/layout/profile.ts';
import { layOut } from '../support/in-english.ts';
import { conductorsDrawn, conductorsWritten, faultsOf } from './read-back.ts';

export const WIDTHS: readonly Width[] = ['phone', 'screen', 'a4'];

/** Conductors that come to a device: where two supplies are joined and nothing hangs on them, there is nothing to draw. */
const atDevices = (conductors: readonly string[]): string[] =>
  conductors.filter((conductor) => conductor.split(' ').some((terminal) => terminal.startsWith('-')));

/** Fails unless the drawing's lines, dots, symbols and marks alone say the circuit, and nothing in it is in the way of anything. */
export function expectSound(circuit: Circuit, profile: Profile, name: string): Scene {
  const scene = layOut(circuit, profile);
  const [drawn, written] = [
    atDevices(conductorsDrawn(scene, circuit)),
    atDevices(conductorsWritten(circuit)),
  ];
  const faults = faultsOf(scene);
  // The circuit is written out only where it has to be shown.
  if (faults.length > 0 || drawn.join() !== written.join()) {
    const of = `${name} for ${profile.name}:\n${writeCircuit(circuit)}`;
    expect(drawn, of).toEqual(written);
    expect(faults, of).toEqual([]);
  }
  return scene;
}

/** At all three widths. */
export const expectSoundEverywhere = (circuit: Circuit, name: string): Scene[] =>
  WIDTHS.map((width) => expectSound(circuit, PROFILES[width], name));
