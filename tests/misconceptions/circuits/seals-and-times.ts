/** What holds a relay, and when a timer moves. */
import type { ThreeCircuits } from './three-circuits.ts';

const sealed = `
# Flour line: start and stop
supply A 24 V AC
-K1 relay 2 poles
-S0 push-button break 21-22
-S1 push-button make
-H1 lamp
A:L -S0:21-22 -S1:13-14 -K1:A1-A2 A:N
-S0:22 -K1:11-14 -S1:14
A:L -K1:21-24 -H1:X1-X2 A:N`;
const stopAndJog = `
# Ice works: jog, with a stop
supply A 24 V AC
-S0 push-button break 21-22
-S1 push-button make
-K1 relay
-H1 lamp
A:L -S0:21-22 -S1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N`;
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
const flasher = timed('flasher 1 s on 1 s off');

export const aboutSealsAndTimes: readonly ThreeCircuits[] = [
  {
    id: 'seal-forgotten',
    shows: [
      {
        on: sealed,
        does: 'press -S1; release -S1',
        right: { '-K1': 'operated', '-H1': 'lit' },
        instead: { '-K1': 'rest', '-H1': 'dark' },
      },
    ],
    nearly: [
      // The button is still held.
      { on: sealed, does: 'press -S1', right: { '-K1': 'operated', '-H1': 'lit' } },
      {
        // The relay's own contact before its coil is a break, which cuts the pulse off and holds nothing.
        on: `
# Ferry ramp: latched light that cuts off its own pulse
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 latching-relay 2 poles
-H1 lamp
A:L -S1:13-14 -K1:11-12 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:B1-B2 A:N
A:L -K1:21-24 -H1:X1-X2 A:N`,
        does: 'press -S1; release -S1',
        right: { '-K1': 'operated', '-K1:B1': 'operated', '-H1': 'lit' },
      },
    ],
    another: {
      on: `
# Flour line: screw follows elevator
supply A 24 V AC
-B1 field-contact make
-K1 relay
-K2 relay
-H1 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K2:A1-A2 A:N
A:L -K2:11-14 -H1:X1-X2 A:N`,
      does: 'make -B1',
      right: { '-K1': 'operated', '-K2': 'operated', '-H1': 'lit' },
      other: 'second-relay-as-drawn',
      // The make contact before the coil of -K2 is another relay's: no seal to forget.
      instead: { '-K2': 'rest', '-H1': 'dark' },
    },
  },
  {
    id: 'seal-where-none',
    shows: [
      {
        on: stopAndJog,
        does: 'press -S1; release -S1',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
      {
        on: `
# Nursery: dosing, only while the pump is on
supply A 24 V AC
-B1 field-contact make
-S2 push-button make
-K1 relay
-K2 relay
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -S2:13-14 -K2:A1-A2 A:N
A:L -K2:11-14 -H2:X1-X2 A:N`,
        does: 'make -B1; press -S2; release -S2',
        right: { '-K1': 'operated', '-K2': 'rest', '-H2': 'dark' },
        // The make contact beside the button is of another relay and holds nothing, but -K2 would be taken to stay.
        instead: { '-K2': 'operated', '-H2': 'lit' },
      },
    ],
    nearly: [
      // It is taken to hold itself, and then the stop button opens.
      {
        on: stopAndJog,
        does: 'press -S1; release -S1; press -S0',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      // It does hold itself.
      { on: sealed, does: 'press -S1; release -S1', right: { '-K1': 'operated', '-H1': 'lit' } },
      // A timer follows its coil.
      {
        on: onDelay,
        does: 'press -S1; wait 6 s; release -S1',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        // A button is there, and before the other coil a contact of the plant, which nobody lets go.
        on: `
# Ferry ramp: gate and horn
supply A 24 V AC
-B1 limit-switch make
-S2 push-button make
-K1 relay
-K2 relay
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -S2:13-14 -K2:A1-A2 A:N`,
        does: 'make -B1; press -S2; break -B1',
        right: { '-K1': 'rest', '-K2': 'operated' },
      },
    ],
    another: {
      on: `
# Ice works: crusher jogged, light latched
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-S3 push-button make
-K1 relay
-K2 latching-relay
-H2 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -S2:13-14 -K2:A1-A2 A:N
A:L -S3:13-14 -K2:B1-B2 A:N
A:L -K2:11-14 -H2:X1-X2 A:N`,
      does: 'press -S2; release -S2',
      right: { '-K1': 'rest', '-K2': 'operated', '-K2:B1': 'operated', '-H2': 'lit' },
      other: 'latch-drops-out',
      instead: { '-K2': 'rest', '-K2:B1': 'rest', '-H2': 'dark' },
    },
  },
  {
    id: 'timers-instant',
    shows: [
      {
        on: onDelay,
        does: 'press -S1; wait 2 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
      {
        on: offDelay,
        does: 'press -S1; release -S1; wait 2 s',
        right: { '-K1': 'operated', '-H1': 'lit' },
        instead: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        // One second on, then off until the second second is over.
        on: flasher,
        does: 'press -S1; wait 1.5 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
    ],
    nearly: [
      // The time is over.
      { on: onDelay, does: 'press -S1; wait 6 s', right: { '-K1': 'operated', '-H1': 'lit' } },
      {
        on: offDelay,
        does: 'press -S1; release -S1; wait 6 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
    ],
    another: {
      on: onDelay,
      does: 'press -S1; wait 6 s; release -S1',
      right: { '-K1': 'rest', '-H1': 'dark' },
      other: 'delays-exchanged',
      // Taken for an off-delay it stays for its time; taken for a plain relay it is let go at once, as it rightly is.
      instead: { '-K1': 'operated', '-H1': 'lit' },
    },
  },
  {
    id: 'delays-exchanged',
    shows: [
      {
        on: offDelay,
        does: 'press -S1; wait 6 s; release -S1; wait 2 s',
        right: { '-K1': 'operated', '-H1': 'lit' },
        instead: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        // Taken for an on-delay it has not operated yet.
        on: offDelay,
        does: 'press -S1; wait 2 s',
        right: { '-K1': 'operated', '-H1': 'lit' },
        instead: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        on: onDelay,
        does: 'press -S1; wait 6 s; release -S1; wait 2 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
        instead: { '-K1': 'operated', '-H1': 'lit' },
      },
    ],
    nearly: [
      // Held for longer than its time either has operated; let go for longer than its time either has released.
      { on: onDelay, does: 'press -S1; wait 6 s', right: { '-K1': 'operated', '-H1': 'lit' } },
      {
        on: offDelay,
        does: 'press -S1; wait 6 s; release -S1; wait 6 s',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
    ],
    another: {
      on: flasher,
      does: 'press -S1; wait 1.5 s',
      right: { '-K1': 'rest', '-H1': 'dark' },
      other: 'timers-instant',
      // A flasher has no delay that could be exchanged.
      instead: { '-K1': 'operated', '-H1': 'lit' },
    },
  },
];
