import { describe, expect, it } from 'vitest';
import { loadNotConnected } from '../../../src/circuit/rules/load-not-connected.ts';
import { judged } from './judging.ts';

describe('a coil or load is connected on both sides', () => {
  it('finds a lamp that lacks its return', () => {
    expect(judged(loadNotConnected, 'supply A 24 V AC\n-H1 lamp\nA:L  -H1:X1')).toEqual([
      [
        '2:1 The lamp -H1:X1-X2 is not connected at X2.',
        'Join -H1:X2 to a conductor: one side leads to each pole of its supply.',
      ],
    ]);
  });

  it('finds a coil that no path comes to', () => {
    expect(judged(loadNotConnected, 'supply A 24 V AC\n-K1 relay\nA:L  -K1:11-12  A:N')).toMatchObject([
      ['2:1 The coil -K1:A1-A2 is not connected at A1 and A2.', expect.stringContaining('-K1:A1 and -K1:A2')],
    ]);
  });

  it('finds a path that ends in the load itself', () => {
    const [found] = judged(loadNotConnected, 'supply A 24 V AC\n-H1 lamp\nA:L  -H1:X1-X2');
    expect(found?.[0]).toBe('3:6 The lamp -H1:X1-X2 is not connected at X2.');
  });

  it('finds a load with both sides on one conductor', () => {
    expect(judged(loadNotConnected, 'supply A 24 V AC\n-Y1 valve\nA:L  -Y1:A1  -Y1:A2')).toEqual([
      [
        '3:6 The valve -Y1:A1-A2 has both sides on the same conductor.',
        'Join its two sides to the two poles of its supply; no current flows between equal voltages.',
      ],
    ]);
  });

  it('looks at both coils of a latching relay and at every end of a motor', () => {
    const text = `supply P 400 V 3AC
supply A 24 V AC
-K1 latching-relay
-M1 motor 400 V 6 terminals
A:L  -K1:A1-A2  A:N
P:L1  -M1:U1-U2  P:L2
P:L2  -M1:V1-V2  P:L3
P:L3  -M1:W1`;
    expect(judged(loadNotConnected, text).map(([message]) => message)).toEqual([
      '3:1 The reset coil -K1:B1-B2 is not connected at B1 and B2.',
      '4:1 The winding -M1:W1-W2 is not connected at W2.',
    ]);
  });

  it('lets inputs be spare, but not wired without their common', () => {
    const wired = 'supply A 24 V DC\n-A1 inputs 4 24V-1\nA:L+  -A1:I2';
    expect(judged(loadNotConnected, wired).map(([message]) => message)).toEqual([
      '2:1 The input -A1:I2-COM is not connected at COM.',
    ]);
    expect(judged(loadNotConnected, `${wired}\n-A1:COM  A:L-`)).toEqual([]);
  });

  it('keeps quiet about loads in series and a motor with an inner star', () => {
    const text = `supply P 400 V 3AC
supply A 24 V AC
-H1 lamp
-H2 lamp
-M1 motor 230 V
A:L  -H1:X1-X2  -H2:X1-X2  A:N
P:L1  -M1:U1
P:L2  -M1:V1
P:L3  -M1:W1`;
    expect(judged(loadNotConnected, text)).toEqual([]);
  });
});
