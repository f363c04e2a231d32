import { describe, expect, it } from 'vitest';
import { suppliesJoined } from '../../../src/circuit/rules/supplies-joined.ts';
import { judged } from './judging.ts';

const BASE = `supply A 24 V AC
supply B 3.3 V DC
-K1 relay 2 poles
-H1 lamp
-A1 inputs 2 3.3V
-S3 selector Off/A/B make A make B
`;

describe('isolated supplies stay apart', () => {
  it('finds two poles on one conductor, at the wire that joins them', () => {
    const text = `${BASE}A:L  -H1:X1-X2  A:N\nB:L+  -A1:I1\n-A1:COM  B:L-\nB:L-  -H1:X2`;
    expect(judged(suppliesJoined, text)).toEqual([
      [
        '10:7 The supplies A and B are joined: A:N and B:L- are on one conductor.',
        'Keep the circuits of A and B apart: give each a pole, terminals and a return of its own.',
      ],
    ]);
  });

  it('finds them joined through a pole that carries both', () => {
    const text = `${BASE}A:L  -K1:11-12  -H1:X1-X2  A:N\n-K1:14  -A1:I1\n-A1:COM  B:L-\nB:L+  -K1:14`;
    expect(judged(suppliesJoined, text).map(([message]) => message)).toEqual([
      '10:7 The supplies A and B are joined, A:L to B:L+, when -K1:11-14 closes.',
    ]);
  });

  it('finds them joined through contacts in a row, whether they ever close together or not', () => {
    const text = `${BASE}A:L  -S3:13-14  -K1:11-12\nB:L+  -K1:12`;
    expect(judged(suppliesJoined, text).map(([message]) => message)).toEqual([
      '8:7 The supplies A and B are joined, A:L to B:L+, when -S3:13-14, -K1:11-12 close.',
    ]);
  });

  it('names each pair once', () => {
    const text = `${BASE}supply C 24 V DC\nA:L  B:L+\nA:N  B:L-\nC:L+  -K1:11-12  A:L`;
    const pairs = judged(suppliesJoined, text).map(([message]) => /supplies . and ./.exec(message)?.[0]);
    expect(pairs).toEqual(['supplies A and B', 'supplies A and C', 'supplies B and C']);
  });

  it('allows two poles of one relay on two supplies', () => {
    const text = `${BASE}A:L  -K1:11-14  -H1:X1-X2  A:N\nA:L  -K1:A1-A2  A:N\nB:L+  -K1:21-24  -A1:I1\n-A1:COM  B:L-`;
    expect(judged(suppliesJoined, text)).toEqual([]);
  });

  it('allows the returns of two earthed supplies on one conductor, and nothing more of them', () => {
    const earthed = BASE.replace('24 V AC', '24 V AC earthed').replace('3.3 V DC', '3.3 V DC earthed');
    expect(judged(suppliesJoined, `${earthed}A:N  B:L-`)).toEqual([]);
    expect(judged(suppliesJoined, `${earthed}A:N  B:L+`)).toHaveLength(1);
    expect(judged(suppliesJoined, `${earthed.replace('DC earthed', 'DC')}A:N  B:L-`)).toHaveLength(1);
  });
});
