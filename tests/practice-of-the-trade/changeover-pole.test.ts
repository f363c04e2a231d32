/** What the trade takes for granted of a changeover pole. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { begin, machineOf, meter, planOf, solve } from '../../src/solver/index.ts';
import { actsOf, circuitOf } from '../support/written.ts';

function solvedAfter(text: string, acts: string) {
  const circuit = circuitOf(text);
  return solve(circuit, { start: 'live', faults: [], acts: [...actsOf(acts, circuit)] }).solution;
}

const POLE = `supply A 24 V AC
-S1 push-button make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
`;

describe('a changeover pole', () => {
  it('with only its two legs wired never lets current through, at rest or operated', () => {
    const bare = POLE.replace('-H2 lamp\n', '');
    for (const acts of ['', 'press -S1'])
      expect(solvedAfter(`${bare}A:L -K1:12\n-K1:14 -H1:X1-X2 A:N`, acts).lamps['-H1']).toBe('dark');
  });

  it('keeps its poles apart: a meter from pole 1 to pole 2, on another supply, shows nothing', () => {
    const circuit = circuitOf(
      `${POLE}supply B 3.3 V DC\n-A1 inputs 1 3.3V\nA:L -K1:11-12 -H1:X1-X2 A:N\n-K1:11-14 -H2:X1-X2 A:N\nB:L+ -K1:21-24 -A1:I1\nB:L- -A1:COM`,
    );
    const machine = machineOf(planOf(circuit));
    expect(meter(machine, begin(machine, 'live'), '-K1:11', '-K1:21')).toEqual({ volts: 0, floating: true });
    expect(meter(machine, begin(machine, 'live'), '-K1:21', 'B:L-').volts).toBeCloseTo(3.3, 9);
  });
});
