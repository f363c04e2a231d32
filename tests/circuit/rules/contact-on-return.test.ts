/** IEC 60204-1, 9.4.3 method a: all contacts between the switched pole and the coil, its other side straight to the common. */
import { describe, expect, it } from 'vitest';
import { contactOnReturn } from '../../../src/circuit/rules/contact-on-return.ts';
import { judged } from './judging.ts';

const BASE = `supply A 24 V DC earthed
-F1 fuse 2 poles
-F2 overload
-Q1 isolator 2 poles
-S1 push-button make make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
-A1 inputs 2 24V-1
`;
const messages = (paths: string) => judged(contactOnReturn, BASE + paths).map(([message]) => message);

describe('no contact stands on the return side', () => {
  it('finds a contact after the coil', () => {
    expect(judged(contactOnReturn, `${BASE}A:L+  -K1:A1-A2  -S1:13-14  A:L-`)).toEqual([
      [
        '10:7 -S1:13-14 stands between the coil -K1:A1-A2 and the return A:L-.',
        'Put every contact between the switched pole and the coil -K1:A1-A2, and join its other side straight to A:L-.',
      ],
    ]);
  });

  it('finds it also with another contact where it should be', () => {
    expect(messages('A:L+  -S1:23-24  -K1:A1-A2  -S1:13-14  A:L-')).toEqual([
      '10:18 -S1:13-14 stands between the coil -K1:A1-A2 and the return A:L-.',
    ]);
  });

  it('names the shorter way to the return where a load has two', () => {
    const [message] = messages(
      'A:L+  -S1:13-14  -H1:X1-X2  -S1:23-24  A:L-\n-H1:X1  -K1:11-12  -K1:21-22  A:L-',
    );
    expect(message).toBe('10:18 -S1:23-24 stands between the lamp -H1:X1-X2 and the return A:L-.');
    // Whichever of its ends that is.
    const [turned] = messages(
      'A:L+  -S1:13-14  -H1:X2-X1  -S1:23-24  A:L-\n-H1:X2  -K1:11-12  -K1:21-22  A:L-',
    );
    expect(turned).toBe('10:18 -S1:23-24 stands between the lamp -H1:X1-X2 and the return A:L-.');
  });

  it('finds several in a row, and the overload in the return of a coil', () => {
    expect(messages('A:L+  -H1:X1-X2  -K1:11-14  -S1:13-14  A:L-')).toEqual([
      '10:7 -K1:11-14, -S1:13-14 stand between the lamp -H1:X1-X2 and the return A:L-.',
    ]);
    expect(messages('A:L+  -S1:13-14  -K1:A1-A2  -F2:95-96  A:L-')).toHaveLength(1);
  });

  it('finds every load on a common that is switched', () => {
    expect(messages('A:L+  -H1:X1-X2  -S1:13-14  A:L-\nA:L+  -H2:X1-X2  -H1:X2')).toHaveLength(2);
    expect(messages('A:L+  -A1:I1\n-A1:COM  -S1:13-14  A:L-')).toEqual([
      '11:1 -S1:13-14 stands between the input -A1:I1-COM and the return A:L-.',
    ]);
  });

  it('allows contacts before the load, and a common that is chained from load to load', () => {
    expect(messages('A:L+  -S1:13-14  -K1:11-12  -H1:X1-X2\n-K1:14  -H2:X1\nA:L-  -H1:X2  -H2:X2')).toEqual(
      [],
    );
  });

  it('allows protective devices, isolators and what never opens on the return', () => {
    expect(messages('A:L+  -Q1:1-2  -F1:1-2  -S1:13-14  -K1:A1-A2  -F2:1-2  -F1:4-3  -Q1:4-3  A:L-')).toEqual(
      [],
    );
  });

  it('allows loads in series, with a contact between them', () => {
    expect(messages('A:L+  -H1:X1-X2  -S1:13-14  -H2:X1-X2  A:L-')).toEqual([]);
  });

  it('has nothing to say of a load between two phases, or of motors', () => {
    const text = `supply P 400 V 3AC
-K1 contactor 22 400 V AC
-M1 motor 400 V 6 terminals
-S1 push-button make
P:L1  -S1:13-14  -K1:A1-A2  P:L2
P:L1  -K1:1-2  -M1:U1-U2  -K1:13-14  P:N
P:L2  -K1:3-4  -M1:V1-V2  P:L3
P:L3  -K1:5-6  -M1:W1-W2  P:L1`;
    expect(judged(contactOnReturn, text)).toEqual([]);
  });

  it('finds a phase-to-neutral load with a contact in the neutral', () => {
    const text =
      'supply P 400 V 3AC\n-H1 lamp 230 V AC\n-S1 push-button make\nP:L1  -H1:X1-X2  -S1:13-14  P:N';
    expect(judged(contactOnReturn, text)).toHaveLength(1);
  });
});
