/**
 * What each kind of relay does at each voltage of its coil: enough to operate, little enough to release, and in between, where it
 * stays as it is (IEC 61810-1, from memory; what a timer does there is common practice, no source).
 */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { machineOf, planOf, runTimed, solve } from '../../src/solver/index.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

/** Its coil has half its voltage through a lamp of its own watts, all of it while -S1 is pressed, and none while -S0 is. */
const circuit = (device: string, contact = '15-18') =>
  circuitOf(`
supply A 24 V DC
-S0 push-button break
-S1 push-button make
-K1 ${device}
-H1 lamp
-H2 lamp 1 W
A:L+ -S0:11-12 -H2:X1-X2 -K1:A1-A2 A:L-
-S0:12 -S1:13-14 -K1:A1
A:L+ -K1:${contact} -H1:X1-X2 A:L-`);

/** How the lamp stands after each of the acts. */
const standing = (on: Circuit, acts: string): string[] => {
  const list = acts.split('; ');
  return list.map(
    (_, index) => solve(on, scenarioOf(list.slice(0, index + 1).join('; '))).solution.lamps['-H1']!,
  );
};
const lampAfter = (device: string, acts: string, contact?: string) =>
  standing(circuit(device, contact), acts);

const HALF = 'release -S1';
const FULL = 'press -S1';
const OFF = 'press -S0';
const ON = 'release -S0';
const all = (...acts: string[]): string => acts.join('; ');

describe('between the limits of its coil', () => {
  it('a relay stays as it is', () => {
    expect(lampAfter('relay', all('wait 1 s', FULL, HALF, OFF, ON), '11-14')).toEqual([
      'dark',
      'lit',
      'lit',
      'dark',
      'dark',
    ]);
  });

  it('an on-delay does not begin its time, and goes on with what it has begun', () => {
    expect(lampAfter('on-delay 5 s', all('wait 60 s', FULL, 'wait 4 s', HALF, 'wait 1 s', OFF))).toEqual([
      'dark',
      'dark',
      'dark',
      'dark',
      'lit',
      'dark',
    ]);
    // Without voltage for a moment it begins anew.
    expect(lampAfter('on-delay 5 s', all(FULL, 'wait 4 s', OFF, ON, 'wait 4 s', 'wait 1 s'))).toEqual([
      'dark',
      'dark',
      'dark',
      'dark',
      'dark',
      'lit',
    ]);
    // Fed on and on it begins nothing anew.
    expect(lampAfter('on-delay 5 s', all(FULL, 'wait 4 s', HALF, FULL, 'wait 1 s', HALF))).toEqual([
      'dark',
      'dark',
      'dark',
      'dark',
      'lit',
      'lit',
    ]);
  });

  it('an off-delay stays as it is, and its time begins when it has lost its voltage', () => {
    expect(
      lampAfter('off-delay 5 s', all('wait 60 s', FULL, HALF, 'wait 60 s', OFF, 'wait 4 s', 'wait 1 s')),
    ).toEqual(['dark', 'lit', 'lit', 'lit', 'lit', 'lit', 'dark']);
    // Fed again before its time is over it goes on as if nothing had been; half the voltage lets the time go on.
    expect(lampAfter('off-delay 5 s', all(FULL, OFF, 'wait 4 s', ON, 'wait 60 s'))).toEqual([
      'lit',
      'lit',
      'lit',
      'lit',
      'lit',
    ]);
    expect(lampAfter('off-delay 5 s', all(FULL, HALF, OFF, 'wait 4 s', ON, 'wait 1 s', OFF))).toEqual([
      'lit',
      'lit',
      'lit',
      'lit',
      'lit',
      'dark',
      'dark',
    ]);
  });

  it('a flasher does not begin, and goes on flashing', () => {
    expect(lampAfter('flasher 1 s on 2 s off', all('wait 60 s', FULL, HALF, OFF, ON))).toEqual([
      'dark',
      'flashing',
      'flashing',
      'dark',
      'dark',
    ]);
  });
});

describe('a flasher', () => {
  it('is on for its time on and off for its time off, from when it is fed, whenever that is', () => {
    const flasher = machineOf(planOf(circuit('flasher 1 s on 2 s off')));
    const { happenings } = runTimed(flasher, scenarioOf(all('wait 7 s', FULL, 'wait 8 s')));
    const lamp = happenings.filter(({ device, what }) => device === '-H1' && what === 'lamp');
    const begun = lamp[0]!.ms;
    expect(begun).toBeGreaterThan(7000);
    // The few milliseconds for which its contacts move are left out of account.
    expect(lamp.map(({ to, ms }) => [to, Math.round((ms - begun) / 100) / 10])).toEqual([
      ['lit', 0],
      ['dark', 1],
      ['lit', 3],
      ['dark', 4],
      ['lit', 6],
      ['dark', 7],
    ]);
  });
});

describe('a latching relay', () => {
  // Each coil has 24 V at Full, 12 V at Half, nothing at Off.
  const latching = circuitOf(`
supply A 24 V DC earthed
supply B 12 V DC earthed
-S1 selector Off/Half/Full make Half 13-14 make Full 23-24
-S2 selector Off/Half/Full make Half 13-14 make Full 23-24
-K1 latching-relay 24 V DC
-H1 lamp
B:L+ -S1:13-14 -K1:A1-A2 A:L-
A:L+ -S1:23-24 -K1:A1
B:L+ -S2:13-14 -K1:B1-B2 A:L-
A:L+ -S2:23-24 -K1:B1
A:L+ -K1:11-14 -H1:X1-X2 A:L-`);
  const set = (to: string): string => `turn -S1 ${to}`;
  const reset = (to: string): string => `turn -S2 ${to}`;
  const latched = (...acts: string[]): string[] => standing(latching, all(...acts));

  it('is put by each coil where that one puts it, and stays there', () => {
    expect(latched(set('Full'), set('Off'), reset('Full'), reset('Off'))).toEqual([
      'lit',
      'lit',
      'dark',
      'dark',
    ]);
  });

  it('with both coils fed stays as it is, and goes where the one puts it that is left', () => {
    expect(latched(set('Full'), reset('Full'), set('Off'))).toEqual(['lit', 'lit', 'dark']);
    expect(latched(reset('Full'), set('Full'), reset('Off'))).toEqual(['dark', 'dark', 'lit']);
  });

  it('takes no notice of a coil between its limits, alone or beside the other', () => {
    expect(latched(set('Half'), set('Full'), set('Off'), reset('Half'))).toEqual([
      'dark',
      'lit',
      'lit',
      'lit',
    ]);
    expect(latched(set('Half'), reset('Full'), set('Off'))).toEqual(['dark', 'dark', 'dark']);
    expect(latched(set('Full'), reset('Half'), set('Half'), reset('Full'))).toEqual([
      'lit',
      'lit',
      'lit',
      'dark',
    ]);
    expect(latched(reset('Half'), set('Full'))).toEqual(['dark', 'lit']);
  });

  it('held by hand goes back where a coil puts it, and stays in the hand’s place without one', () => {
    expect(latched('hold -K1', 'free -K1')).toEqual(['lit', 'lit']);
    expect(latched(reset('Full'), 'hold -K1', 'free -K1')).toEqual(['dark', 'lit', 'dark']);
    expect(latched(reset('Full'), set('Full'), 'hold -K1', 'free -K1')).toEqual([
      'dark',
      'dark',
      'lit',
      'lit',
    ]);
  });
});
