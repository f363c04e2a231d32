import './support/words.ts';
import { describe, expect, it } from 'vitest';
import { type Points, reading, shown, touched } from '../../src/web/screens/try/meter-panel.tsx';

const having = (...terminals: string[]): Points => terminals.reduce<Points>(touched, ['', '']);

describe('a meter on a drawing', () => {
  it('takes the first touch for its first lead and the second for its reference', () => {
    expect(having('-K1:14')).toEqual(['-K1:14', '']);
    expect(having('-K1:14', 'A:N')).toEqual(['-K1:14', 'A:N']);
  });

  it('keeps its reference while the first lead goes from terminal to terminal', () => {
    expect(having('-K1:14', 'A:N', '-H1:X1', '-H2:X1')).toEqual(['-H2:X1', 'A:N']);
  });

  it('has the lead taken off that is touched', () => {
    expect(having('-K1:14', 'A:N', 'A:N')).toEqual(['-K1:14', '']);
    expect(having('-K1:14', 'A:N', '-K1:14')).toEqual(['', 'A:N']);
    expect(having('-K1:14', 'A:N', '-K1:14', '-H1:X1')).toEqual(['-H1:X1', 'A:N']);
  });

  it('says in words what it shows, and why it shows nothing', () => {
    const points = ['-K1:14', 'B:L-'] as const;
    expect(reading(points, { volts: 23.999_6 })).toBe('-K1:14 against B:L-: 24 V.');
    expect(reading(points, { volts: null })).toMatch(/shows nothing.*isolated supplies/);
    expect(reading(['-K1:14', ''], undefined)).toMatch(/hangs free/);
    expect(shown({ volts: -3.3 })).toBe('-3.3 V');
    expect(shown({ volts: null })).toBe('nothing');
  });
});
