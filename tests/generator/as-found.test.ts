/** Drawings as somebody found them: wired otherwise than their words say, and said to be. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { checkRules, readCircuit, unsound, writeCircuit } from '../../src/circuit/index.ts';
import { textProfile } from '../../src/drawing/text/profile.ts';
import { wiredOtherwise } from '../../src/generator/as-found.ts';
import { familyOf, generate, randomOf } from '../../src/generator/index.ts';
import { solve } from '../../src/solver/index.ts';
import { drawn } from '../support/drawn.ts';
import { askQuestion, english, layOut } from '../support/in-english.ts';
import { circuitOf } from '../support/written.ts';

const SEEDS = drawn(60);
const devicesOf = ({ devices }: Circuit) => devices.map((device) => JSON.stringify(device)).sort();

describe('as found', () => {
  const pairs = Array.from({ length: SEEDS }, (_, seed) => {
    const id = ['status-pair', 'seal-in', 'interlocked', 'relay-chain'][seed % 4]!;
    const draft = familyOf(id)!.draft(randomOf(`meant ${seed}`), { size: 1 + (seed % 5) });
    return { meant: draft.circuit, found: wiredOtherwise(draft, randomOf(`found ${seed}`))?.circuit };
  });

  it('has the same devices with the same words, and other conductors', () => {
    for (const { meant, found } of pairs) {
      expect(found?.asFound).toBe(true);
      expect(devicesOf(found!)).toEqual(devicesOf(meant));
      expect(found!.paths).not.toEqual(meant.paths);
      expect(unsound(found!)).toEqual([]);
    }
  });

  it('has a seal led round the stop among its mistakes: the stop then stops nothing', () => {
    const round = Array.from({ length: 40 }, (_, seed) => {
      const { circuit } = wiredOtherwise(
        familyOf('seal-in')!.draft(randomOf(`seal ${seed}`), { size: 1 }),
        randomOf(`round ${seed}`),
      )!;
      const named = (pattern: RegExp) => circuit.devices.find(({ text }) => pattern.test(text ?? ''))!.name;
      const [start, stop] = [named(/^Start/), named(/^Stop/)];
      const relay = circuit.devices.find(({ name }) => name.startsWith('-K') || name.startsWith('-Q'))!.name;
      const acts = [
        { kind: 'press', device: start },
        { kind: 'release', device: start },
        { kind: 'press', device: stop },
      ] as const;
      const { coils } = solve(circuit, { start: 'live', faults: [], acts: [...acts] }).solution;
      return coils[relay]!.operated;
    });
    expect(round.filter(Boolean).length).toBeGreaterThan(0);
    expect(round.filter((runs) => !runs).length).toBeGreaterThan(0);
  });

  it('is made where it is asked for, keeps the drawing rules, and has one outcome', () => {
    for (let seed = 0; seed < drawn(24); seed++) {
      const made = generate({
        seed: `found ${seed}`,
        family: 'status-pair',
        size: 1 + (seed % 4),
        asFound: true,
      });
      if (!made.ok) throw new Error(`seed ${seed}`);
      const { circuit, scenario } = made.accepted.draft;
      expect(circuit.asFound).toBe(true);
      expect(checkRules(circuit)).toEqual([]);
      expect(solve(circuit, scenario).solution.outcome.kind).toBe('steady');
      expect(readCircuit(writeCircuit(circuit))).toEqual({ ok: true, value: circuit });
    }
  });

  it('is undefined where nothing can be wired wrongly', () => {
    const circuit = circuitOf('supply A 24 V DC\n-H1 lamp\nA:L+ -H1:X1-X2 A:L-');
    const draft = familyOf('make-only')!.draft(randomOf('one'), { size: 1 });
    expect(wiredOtherwise({ ...draft, circuit }, randomOf('none'))).toBeUndefined();
  });
});

describe('a drawing as found', () => {
  const circuit = circuitOf(
    '# Ice works: one lamp\nas-found\nsupply A 24 V DC\n-H1 lamp "Pump on"\nA:L+ -H1:X1-X2 A:L-',
  );

  it('is read and written with its line after the title', () => {
    expect(circuit.asFound).toBe(true);
    expect(writeCircuit(circuit).split('\n').slice(0, 3)).toEqual([
      '# Ice works: one lamp',
      'as-found',
      'supply A 24 V DC',
    ]);
    const misspelt = readCircuit('as-fond\nsupply A 24 V DC\n-H1 lamp\nA:L+ -H1:X1-X2 A:L-');
    expect(JSON.stringify(misspelt)).toContain('as-found');
  });

  it('says so in the question and behind its title', () => {
    const { situation } = askQuestion({
      kind: 'lamp-states',
      family: 'fixed',
      circuit,
      scenario: { start: 'live', faults: [], acts: [] },
      asked: ['-H1'],
    });
    expect(situation[0]).toBe(english.situation.asFound);
    expect(layOut(circuit, textProfile(80)).title).toBe('Ice works: one lamp (as found)');
  });
});
