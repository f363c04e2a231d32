/**
 * A critical and a non-critical race as the theory of asynchronous switching circuits defines them: S. H. Unger,
 * Asynchronous Sequential Switching Circuits, 1969 (both definitions, from memory); the cross-coupled NOR latch released
 * from its forbidden input is the standard example of the first (J. A. Brzozowski and C.-J. Seger, Asynchronous Circuits,
 * 1995, from memory). Each is built of relays here.
 */
import { describe, expect, it } from 'vitest';
import {
  everyBeginning,
  everyOutcome,
  machineOf,
  planOf,
  type Standing,
  solve,
} from '../../src/solver/index.ts';
import { actsOf, circuitOf } from '../support/written.ts';

function standing(text: string, acts: string) {
  const circuit = circuitOf(text);
  const done = [...actsOf(acts, circuit)];
  const machine = machineOf(planOf(circuit));
  let found: Standing = everyBeginning(machine, 'live');
  for (const act of done) found = everyOutcome(machine, found, act);
  const place = (name: string): number => machine.mechanismOf.get(name)!;
  const stable = found.endings
    .filter(({ states }) => states.length === 1)
    .map(({ states }) => ['-K1', '-K2'].map((name) => (states[0]!.at[place(name)] === 2 ? 1 : 0)).join(''));
  const { outcome } = solve(circuit, { start: 'live', faults: [], acts: done }).solution;
  return {
    stable: stable.sort(),
    cycles: found.endings.length - stable.length,
    outcome,
    complete: found.complete,
  };
}

/** Q = NOR(R, P) and P = NOR(S, Q), with one button that is S and R together. */
const NOR_LATCH = `supply A 24 V DC
-F1 breaker
-S1 push-button break 11-12 break 21-22
-K1 relay 2 poles
-K2 relay 2 poles
A:L+ -F1:1-2 -S1:11-12 -K2:11-12 -K1:A1-A2 A:L-
-F1:2 -S1:21-22 -K1:11-12 -K2:A1-A2 A:L-
`;

/** Y1 = Y2 = x + y1·y2: with x both change, 00 to 11, and each way round leads there. */
const BOTH_FOLLOW = `supply A 24 V DC
-F1 breaker
-S1 push-button make 13-14 make 23-24
-K1 relay 4 poles
-K2 relay 4 poles
A:L+ -F1:1-2 -S1:13-14 -K1:A1-A2 A:L-
-F1:2 -K1:11-14 -K2:11-14 -K1:A1
-F1:2 -S1:23-24 -K2:A1-A2 A:L-
-F1:2 -K1:21-24 -K2:21-24 -K2:A1
`;

describe('a critical race', () => {
  it('of the cross-coupled latch released from both inputs at once: either side may win, or neither for ever', () => {
    const { stable, cycles, outcome, complete } = standing(NOR_LATCH, 'press -S1; release -S1');
    expect(complete).toBe(true);
    expect(stable).toEqual(['01', '10']);
    // The multiple winner analysis also finds the two in step, as the theory does.
    expect(cycles).toBe(1);
    expect(outcome).toMatchObject({ kind: 'race', devices: ['-K1', '-K2'] });
  });

  it('is over when both inputs are on: the latch has one state then', () => {
    const { stable, cycles, outcome } = standing(NOR_LATCH, 'press -S1; release -S1; press -S1');
    expect({ stable, cycles, kind: outcome.kind }).toEqual({ stable: ['00'], cycles: 0, kind: 'steady' });
  });
});

describe('a non-critical race', () => {
  it('of two relays that change together ends in one state whichever is first', () => {
    const { stable, cycles, outcome, complete } = standing(BOTH_FOLLOW, 'press -S1');
    expect({ stable, cycles, complete, kind: outcome.kind }).toEqual({
      stable: ['11'],
      cycles: 0,
      complete: true,
      kind: 'steady',
    });
  });

  it('and the state it ended in holds when the input has gone', () => {
    const { stable, outcome } = standing(BOTH_FOLLOW, 'press -S1; release -S1');
    expect({ stable, kind: outcome.kind }).toEqual({ stable: ['11'], kind: 'steady' });
  });
});
