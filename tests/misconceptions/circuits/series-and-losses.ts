/** What is passed over on the way to a load, and what is taken to last over an interruption. */
import type { ThreeCircuits } from './three-circuits.ts';

const interlocked = `
# Ferry ramp: raise and lower, interlocked
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp
-H2 lamp
A:L -S1:13-14 -K2:11-12 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:11-12 -K2:A1-A2 A:N
A:L -K1:21-24 -H1:X1-X2 A:N
A:L -K2:21-24 -H2:X1-X2 A:N`;
const ready = `
# Ice works: compressor ready, its conditions in series
supply A 24 V AC
-B1 field-contact make
-B2 field-contact make
-B3 field-contact break
-K1 relay
-H1 lamp
-H2 lamp
A:L -B1:13-14 -B2:13-14 -B3:11-12 -K1:A1-A2 A:N
A:L -K1:11-12 -H1:X1-X2 A:N
-K1:11-14 -H2:X1-X2 A:N`;
const sealed = `
# Flour line: start and stop, with a breaker
supply A 24 V AC
-F1 breaker
-K1 relay 2 poles
-S0 push-button break 21-22
-S1 push-button make
-H1 lamp
A:L -F1:1-2 -S0:21-22 -S1:13-14 -K1:A1-A2 A:N
-S0:22 -K1:11-14 -S1:14
-F1:2 -K1:21-24 -H1:X1-X2 A:N`;
const timed = (kind: string): string => `
# Nursery: run-up and run-on
supply A 24 V AC
-S1 push-button make
-K1 ${kind}
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:15-18 -H1:X1-X2 A:N`;
const onDelay = timed('on-delay 5 s');
const offDelay = timed('off-delay 5 s');

export const aboutSeriesAndLosses: readonly ThreeCircuits[] = [
  {
    id: 'blocking-contact-overlooked',
    shows: [
      {
        // The button of the other direction is pressed as well; its contact is closed, the interlock before the coil open.
        on: interlocked,
        does: 'press -S1; press -S2',
        right: { '-K1': 'operated', '-K2': 'rest', '-H1': 'lit', '-H2': 'dark' },
        instead: { '-K2': 'operated', '-H2': 'lit' },
      },
      {
        // Nobody's hand is in it: the first condition is there, and the others are passed over.
        on: ready,
        does: 'make -B1',
        right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit' },
      },
      {
        // Two ways beside one another are followed both, and the trip behind them is passed over.
        on: `
# Flour line: start, seal and overload
supply A 24 V AC
-F2 overload
-S1 push-button make
-K1 relay 2 poles
-H1 lamp
A:L -S1:13-14 -F2:95-96 -K1:A1-A2 A:N
A:L -K1:11-14 -S1:14
A:L -K1:21-24 -H1:X1-X2 A:N`,
        does: 'press -S1; release -S1; trip -F2',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
    ],
    nearly: [
      // The first of the conditions is what is missing.
      { on: ready, does: 'make -B2', right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' } },
      // A stop button is looked at as much as a start.
      { on: sealed, does: 'press -S0; press -S1', right: { '-K1': 'rest', '-H1': 'dark' } },
      {
        // The breaker in series feeds everything behind it, and everybody looks at that.
        on: sealed,
        does: 'press -S1; open -F1',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        // What is in series before -K1 is all there is before the lamp: -B1 is looked at there.
        on: `
# Nursery: dosing while there is water
supply A 24 V AC
-B1 field-contact make
-S1 push-button make
-K1 relay
-H1 lamp
A:L -B1:13-14 -S1:13-14 -K1:A1-A2 A:N
-B1:14 -H1:X1-X2 A:N`,
        does: 'press -S1',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
    ],
    another: {
      on: `
# Ferry ramp: ramp locked, its lamp by the break contact
supply A 24 V AC
-B1 limit-switch make
-S1 push-button make
-K1 relay 2 poles
-K2 relay
-H1 lamp
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -S1:13-14 -K2:A1-A2 A:N
A:L -K1:11-12 -H1:X1-X2 A:N
A:L -K2:11-14 -H2:X1-X2 A:N`,
      does: 'make -B1',
      right: { '-K1': 'operated', '-K2': 'rest', '-H1': 'dark', '-H2': 'dark' },
      other: 'break-never-opens',
      // One contact alone before its lamp: there is nothing in series to pass over.
      instead: { '-H1': 'lit' },
    },
  },
  {
    id: 'remembers-over-loss',
    shows: [
      {
        on: sealed,
        does: 'press -S1; release -S1; fail A; restore A',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
      {
        on: sealed,
        does: 'press -S1; release -S1; open -F1; close -F1',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
      {
        // A timer begins afresh, too.
        on: onDelay,
        does: 'press -S1; wait 6 s; fail A; restore A; wait 2 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
    ],
    nearly: [
      // The supply stays away: everybody sees that all is dead.
      {
        on: sealed,
        does: 'press -S1; release -S1; fail A; restore A; fail A',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      // The button is still held when the supply returns.
      {
        on: sealed,
        does: 'press -S1; fail A; restore A',
        right: { '-K1': 'operated', '-H1': 'lit' },
      },
      // It was stopped before.
      {
        on: sealed,
        does: 'press -S1; release -S1; press -S0; release -S0; fail A; fail A; restore A',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        // A latching relay does remember.
        on: `
# Nursery: lighting, latched
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 latching-relay
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:B1-B2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N`,
        does: 'press -S1; release -S1; fail A; restore A',
        right: { '-K1': 'operated', '-K1:B1': 'operated', '-H1': 'lit' },
      },
    ],
    another: {
      on: sealed,
      does: 'press -S1; release -S1; open -F1; close -F1; press -S0',
      right: { '-K1': 'rest', '-H1': 'dark' },
      other: 'open-contact-followed',
      // The lamp's own make contact is taken for closed; stopped after the loss, the relay is at rest for either.
      instead: { '-H1': 'lit' },
    },
  },
  {
    id: 'delay-adds-up',
    shows: [
      {
        // Three seconds and three make six.
        on: onDelay,
        does: 'press -S1; wait 3 s; release -S1; press -S1; wait 3 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
      {
        on: offDelay,
        does: 'press -S1; release -S1; wait 3 s; press -S1; release -S1; wait 3 s',
        right: { '-K1': 'operated', '-H1': 'lit' },
        instead: { '-K1': 'rest', '-H1': 'dark' },
      },
    ],
    nearly: [
      // Two and two are not five, and what is off is not counted.
      {
        on: onDelay,
        does: 'press -S1; wait 2 s; release -S1; wait 10 s; press -S1; wait 2 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      // Its time was over once, so the next one is whole again.
      {
        on: onDelay,
        does: 'press -S1; wait 3 s; release -S1; press -S1; wait 6 s; release -S1; press -S1; wait 3 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        on: offDelay,
        does: 'press -S1; release -S1; wait 6 s; press -S1; release -S1; wait 3 s',
        right: { '-K1': 'operated', '-H1': 'lit' },
      },
      // Interrupted, and held for the whole time after.
      {
        on: onDelay,
        does: 'press -S1; wait 3 s; release -S1; press -S1; wait 6 s',
        right: { '-K1': 'operated', '-H1': 'lit' },
      },
    ],
    another: {
      on: onDelay,
      does: 'press -S1; wait 3 s',
      right: { '-K1': 'rest', '-H1': 'dark' },
      other: 'timers-instant',
      // Nothing has been interrupted, so there is nothing to add up.
      instead: { '-K1': 'operated', '-H1': 'lit' },
    },
  },
];
