import { describe, expect, it } from 'vitest';
import { commonUnused } from '../../../src/circuit/rules/common-unused.ts';
import { onlyLegsWired } from '../../../src/circuit/rules/only-legs-wired.ts';
import { judged } from './judging.ts';

const BASE = 'supply A 24 V AC\n-K1 relay 2 poles\n-B1 limit-switch changeover\n-H1 lamp\n';

describe('the common of a changeover pole is used', () => {
  it('finds a leg that is wired without its common', () => {
    expect(judged(commonUnused, `${BASE}A:L  -K1:14  -H1:X1-X2  A:N`)).toEqual([
      [
        '5:6 The leg 14 of -K1 is wired and its common 11 is not.',
        'Bring the conductor to -K1:11 and go on from 14: -K1:11-14.',
      ],
    ]);
  });

  it('looks at each pole by itself, of switches too', () => {
    const text = `${BASE}A:L  -K1:11-14  -H1:X1-X2  A:N\n-K1:22  -B1:12`;
    expect(judged(commonUnused, text).map(([message]) => message)).toEqual([
      '6:1 The leg 22 of -K1 is wired and its common 21 is not.',
      '6:9 The leg 12 of -B1 is wired and its common 11 is not.',
    ]);
  });

  it('allows one leg or both with the common, a common alone, and an unused pole', () => {
    const text = `${BASE}A:L  -K1:11-14  -H1:X1-X2  A:N\n-K1:12  -H1:X1\nA:L  -K1:21`;
    expect(judged(commonUnused, text)).toEqual([]);
  });
});

describe('not only the two legs of a pole are wired', () => {
  it('finds a pole whose legs alone are in the circuit: no current can ever flow', () => {
    expect(judged(onlyLegsWired, `${BASE}A:L  -K1:12-14  -H1:X1-X2  A:N`)).toEqual([
      [
        '5:6 Only the two legs 12 and 14 of -K1 are wired.',
        'Use the common 11 with one leg: 11-12 is closed at rest, 11-14 when operated.',
      ],
    ]);
  });

  it('is the only rule that speaks of it', () => {
    expect(judged(commonUnused, `${BASE}A:L  -K1:12-14  -H1:X1-X2  A:N`)).toEqual([]);
  });

  it('allows both legs with the common', () => {
    const text = `${BASE}A:L  -K1:11-12  -H1:X1-X2  A:N\n-K1:14  -H1:X1`;
    expect(judged(onlyLegsWired, text)).toEqual([]);
  });
});
