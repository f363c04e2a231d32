/** IEC 61810-1 and IEC 60947-4-1 (from memory): coils work from 85 % to 110 % of their rated voltage. */
import { describe, expect, it } from 'vitest';
import { wrongVoltage } from '../../../src/circuit/rules/wrong-voltage.ts';
import { judged } from './judging.ts';

const messages = (text: string) =>
  judged(wrongVoltage, text).map(([message]) => message.replace(/^\S+ /, ''));

describe('a coil or load is on its own voltage', () => {
  it('finds a coil on too little', () => {
    const text = 'supply A 24 V AC\n-K1 relay 230 V AC\n-S1 push-button make\nA:L  -S1:13-14  -K1:A1-A2  A:N';
    expect(judged(wrongVoltage, text)).toEqual([
      [
        '4:17 The coil -K1:A1-A2 is made for 230 V AC, and the supply A gives it 24 V AC.',
        'Feed it from a supply of 230 V AC, or fit one for 24 V AC.',
      ],
    ]);
  });

  it('finds a load on the wrong kind of current', () => {
    expect(messages('supply A 24 V DC\n-H1 lamp 24 V AC\nA:L+  -H1:X1-X2  A:L-')).toEqual([
      'The lamp -H1:X1-X2 is made for 24 V AC, and the supply A gives it 24 V DC.',
    ]);
  });

  it('finds a controller’s input on a control voltage, and on AC', () => {
    const text = (supply: string, type: string, pole: string, end: string) =>
      `supply A ${supply}\n-A1 inputs 1 ${type}\nA:${pole}  -A1:I1-COM  A:${end}`;
    expect(messages(text('24 V DC', '3.3V', 'L+', 'L-'))).toHaveLength(1);
    expect(messages(text('24 V AC', '24V-3', 'L', 'N'))).toEqual([
      'The input -A1:I1-COM is made for 24 V DC, and the supply A gives it 24 V AC.',
    ]);
    expect(messages(text('24 V DC', '24V-3', 'L+', 'L-'))).toEqual([]);
  });

  it.each([
    [203, false],
    [204, true],
    [264, true],
    [265, false],
  ])('on %i V of 240: %s', (volts, allowed) => {
    const text = `supply A ${volts} V AC\n-Y1 valve 240 V AC\nA:L  -Y1:A1-A2  A:N`;
    expect(messages(text)).toHaveLength(allowed ? 0 : 1);
  });

  it('finds a load with its two sides on two supplies', () => {
    const text = 'supply A 24 V AC\nsupply B 24 V AC\n-H1 lamp\nA:L  -H1:X1-X2  B:N';
    expect(judged(wrongVoltage, text)).toEqual([
      [
        '4:6 The lamp -H1:X1-X2 has one side on the supply A and the other on B.',
        'Bring both sides to the two poles of one supply: between isolated supplies no current flows.',
      ],
    ]);
  });

  it('counts 400 V between two phases and 231 V from a phase to neutral', () => {
    const lamp = (volts: number, end: string) =>
      messages(`supply P 400 V 3AC\n-H1 lamp ${volts} V AC\nP:L1  -H1:X1-X2  P:${end}`);
    expect(lamp(230, 'N')).toEqual([]);
    expect(lamp(400, 'L2')).toEqual([]);
    expect(lamp(400, 'N')).toEqual([
      'The lamp -H1:X1-X2 is made for 400 V AC, and the supply P gives it 231 V AC.',
    ]);
    expect(lamp(230, 'L2')).toHaveLength(1);
  });

  it('says nothing of loads in series, that share what there is, nor of one that is not fed', () => {
    const text = `supply A 24 V AC
-H1 lamp 12 V AC
-H2 lamp 12 V AC
-H3 lamp 230 V AC
A:L  -H1:X1-X2  -H2:X1-X2  A:N
-H3:X1  -H1:X2`;
    expect(messages(text)).toEqual([]);
  });
});

describe('a motor is on its own voltage', () => {
  const star = (supply: string, motor: string) => `supply P ${supply}
-M1 motor ${motor}
P:L1  -M1:U1
P:L2  -M1:V1
P:L3  -M1:W1`;
  const delta = (volts: number) => `supply P 400 V 3AC
-M1 motor ${volts} V 6 terminals
P:L1  -M1:U1-U2  P:L2
P:L2  -M1:V1-V2  P:L3
P:L3  -M1:W1-W2  P:L1`;

  it('in star gets the voltage of the supply divided by the root of three', () => {
    expect(messages(star('400 V 3AC', '230 V'))).toEqual([]);
    expect(messages(star('400 V 3AC', '400 V'))).toEqual([
      'A winding of -M1 is made for 400 V, and the supply P gives it 231 V in star.',
    ]);
    const outside = `${star('400 V 3AC', '400 V 6 terminals')}\n-M1:U2  -M1:V2  -M1:W2`;
    expect(judged(wrongVoltage, outside)[0]?.[1]).toContain('Join it in delta');
  });

  it('in delta gets all of it', () => {
    expect(messages(delta(400))).toEqual([]);
    expect(messages(delta(230))).toEqual([
      'A winding of -M1 is made for 230 V, and the supply P gives it 400 V in delta.',
    ]);
  });

  it('needs three phases', () => {
    const text = 'supply A 230 V AC\n-M1 motor 230 V\nA:L  -M1:U1\nA:N  -M1:V1  -M1:W1';
    expect(messages(text)).toEqual(['The motor -M1 is made for three phases, and the supply A is AC.']);
  });

  it('started in star and run in delta is judged in delta', () => {
    const text = `supply P 400 V 3AC
supply A 24 V AC
-K1 contactor
-K2 contactor
-M1 motor 400 V 6 terminals
P:L1  -M1:U1
P:L2  -M1:V1
P:L3  -M1:W1
-M1:U2  -K1:1-2
-M1:V2  -K1:3-4
-M1:W2  -K1:5-6
-K1:2  -K1:4  -K1:6
-M1:U2  -K2:1-2  P:L2
-M1:V2  -K2:3-4  P:L3
-M1:W2  -K2:5-6  P:L1
A:L  -K1:A1-A2  A:N
A:L  -K2:A1-A2  A:N`;
    expect(messages(text)).toEqual([]);
    expect(messages(text.replace('motor 400 V', 'motor 230 V'))).toHaveLength(1);
  });
});
