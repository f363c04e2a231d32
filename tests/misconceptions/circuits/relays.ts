/** Which relays and which of their contacts move, and what stays without a coil. */
import type { ThreeCircuits } from './three-circuits.ts';

const iceGate = `
# Ice works: gate, with a second contact of -B1 beside the relay
supply A 24 V AC
-F1 breaker
-B1 limit-switch make make
-K1 relay
-H1 lamp
-H2 lamp
-H3 lamp
A:L -F1:1-2 -B1:13-14 -K1:A1-A2 A:N
-F1:2 -B1:23-24 -H3:X1-X2 A:N
-F1:2 -K1:11-12 -H1:X1-X2 A:N
-K1:11-14 -H2:X1-X2 A:N`;
const jog = `
# Flour line: jog the elevator
supply A 24 V AC
-S1 push-button make
-K1 relay
-H1 lamp
-H2 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:11-12 -H1:X1-X2 A:N
-K1:11-14 -H2:X1-X2 A:N`;
const latch = `
# Nursery: lighting, latched
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 latching-relay
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:B1-B2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N`;

export const aboutRelays: readonly ThreeCircuits[] = [
  {
    id: 'nothing-moves',
    shows: [
      {
        on: iceGate,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit', '-H3': 'lit' },
        // What is moved by the plant and by hand moves; -K1 is read as drawn.
        instead: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' },
      },
    ],
    nearly: [
      {
        // In the end the relay stands as it is drawn.
        on: jog,
        does: 'press -S1; release -S1',
        right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' },
      },
    ],
    another: {
      on: `
# Ferry ramp: two lamps by one relay
supply A 24 V AC
-B1 limit-switch make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N
A:L -K1:21-24 -H2:X1-X2 A:N`,
      does: 'make -B1',
      right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'lit' },
      other: 'first-pole-only',
      // One pole moved: that isn't nothing.
      instead: { '-H2': 'dark' },
      own: { '-K1': 'rest', '-H1': 'dark', '-H2': 'dark' },
    },
  },
  {
    id: 'second-relay-as-drawn',
    shows: [
      {
        on: `
# Flour line: sifter, elevator, screw one after the other
supply A 24 V AC
-B1 field-contact make
-K1 relay
-K2 relay
-K3 relay
-H1 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K2:A1-A2 A:N
A:L -K2:11-14 -K3:A1-A2 A:N
A:L -K3:11-14 -H1:X1-X2 A:N`,
        does: 'make -B1',
        right: { '-K1': 'operated', '-K2': 'operated', '-K3': 'operated', '-H1': 'lit' },
        instead: { '-K2': 'rest', '-K3': 'rest', '-H1': 'dark' },
      },
      {
        on: `
# Ferry ramp: raise and lower interlocked, -K3 follows -K1
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 relay 2 poles
-K2 relay
-K3 relay
-H3 lamp
A:L -S1:13-14 -K2:11-12 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:11-12 -K2:A1-A2 A:N
A:L -K1:21-24 -K3:A1-A2 A:N
A:L -K3:11-14 -H3:X1-X2 A:N`,
        does: 'press -S1',
        right: { '-K1': 'operated', '-K2': 'rest', '-K3': 'operated', '-H3': 'lit' },
        // -K1 and -K2 act on each other: neither is the second one. -K3 is.
        instead: { '-K3': 'rest', '-H3': 'dark' },
      },
      {
        on: `
# Nursery: light latched by the dusk relay, reset by hand
supply A 24 V AC
-B1 field-contact make
-S2 push-button make
-K1 relay
-K2 latching-relay
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K2:A1-A2 A:N
A:L -S2:13-14 -K2:B1-B2 A:N
A:L -K2:11-14 -H2:X1-X2 A:N`,
        does: 'make -B1',
        right: { '-K1': 'operated', '-K2': 'operated', '-K2:B1': 'operated', '-H2': 'lit' },
        // One of its coils is fed through -K1, and that one should have set it.
        instead: { '-K2': 'rest', '-K2:B1': 'rest', '-H2': 'dark' },
      },
    ],
    nearly: [
      {
        // The contact of -K1 hangs on the conductor that feeds -K2 and leads elsewhere.
        on: `
# Ice works: two relays under one breaker
supply A 24 V AC
-F1 breaker
-B1 field-contact make
-B2 field-contact make
-K1 relay
-K2 relay
-H1 lamp
-H2 lamp
A:L -F1:1-2 -B1:13-14 -K1:A1-A2 A:N
-F1:2 -K1:11-14 -H1:X1-X2 A:N
-F1:2 -B2:13-14 -K2:A1-A2 A:N
-F1:2 -K2:11-14 -H2:X1-X2 A:N`,
        does: 'make -B1; make -B2',
        right: { '-K1': 'operated', '-K2': 'operated', '-H1': 'lit', '-H2': 'lit' },
      },
      {
        // Two interlocked relays, the one fed through the other's break contact: each is as much the first.
        on: `
# Ferry ramp: raise and lower, interlocked
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 relay
-K2 relay
A:L -S1:13-14 -K2:11-12 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:11-12 -K2:A1-A2 A:N`,
        does: 'press -S2',
        right: { '-K1': 'rest', '-K2': 'operated' },
      },
    ],
    another: {
      on: `
# Nursery: shade motor and its lamp
supply A 24 V AC
-B1 field-contact make
-K1 relay 2 poles
-K2 relay
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K2:A1-A2 A:N
A:L -K1:21-24 -H2:X1-X2 A:N`,
      does: 'make -B1',
      right: { '-K1': 'operated', '-K2': 'operated', '-H2': 'lit' },
      other: 'first-pole-only',
      // The first pole feeds -K2, the second the lamp.
      instead: { '-H2': 'dark' },
      own: { '-K2': 'rest' },
    },
  },
  {
    id: 'contacts-beside-coil',
    shows: [
      {
        on: `
# Flour line: control on one sheet, signals on the other
supply A 24 V AC
-K1 relay 2 poles
-B1 field-contact make
-H1 lamp
-H2 lamp
sheet 1
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N
sheet 2
A:L -K1:21-24 -H2:X1-X2 A:N`,
        does: 'make -B1',
        // One ohm of dirt in the contact changes nothing: a lamp has some hundred.
        faults: '-K1:21-24 dirty 1 ohm',
        right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'lit' },
        instead: { '-H2': 'dark' },
      },
      {
        on: `
# Nursery: the break leg beside the coil, the make leg of the same pole on the other sheet
supply A 24 V AC
-B1 field-contact make
-K1 relay
-H1 lamp
-H2 lamp
sheet 1
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-12 -H1:X1-X2 A:N
sheet 2
-K1:11-14 -H2:X1-X2 A:N`,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit' },
        // The leg beside the coil opens, the one on the other sheet stays open.
        instead: { '-H2': 'dark' },
      },
      {
        // The second sheet takes a lamp off the coil's terminal; the coil itself is drawn on the first one.
        on: `
# Flour line: lamp beside the coil, drawn with the signals
supply A 24 V AC
-B1 field-contact make
-K1 relay
-H1 lamp
-H2 lamp
sheet 1
A:L -B1:13-14 -K1:A1-A2 A:N
sheet 2
-K1:A1 -H1:X1-X2 A:N
A:L -K1:11-14 -H2:X1-X2 A:N`,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'lit' },
        instead: { '-H2': 'dark' },
      },
      {
        // And a lamp on the first sheet goes off the contact's terminal; the contact is drawn on the second one.
        on: `
# Flour line: lamp behind a contact of the other sheet
supply A 24 V AC
-B1 field-contact make
-K1 relay
-H1 lamp
sheet 1
A:L -B1:13-14 -K1:A1-A2 A:N
-K1:14 -H1:X1-X2 A:N
sheet 2
A:L -K1:11-14 -X1:1
-X1 terminals 1`,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'lit' },
        instead: { '-H1': 'dark' },
      },
    ],
    nearly: [
      {
        // Each contact stands beside one of the two coils.
        on: `
# Ice works: latched light, set on one sheet, reset on the other
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 latching-relay 2 poles
-H1 lamp
-H2 lamp
sheet 1
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N
sheet 2
A:L -S2:13-14 -K1:B1-B2 A:N
A:L -K1:21-24 -H2:X1-X2 A:N`,
        does: 'press -S1; release -S1',
        right: { '-K1': 'operated', '-K1:B1': 'operated', '-H1': 'lit', '-H2': 'lit' },
      },
      {
        // What is on the other sheet is moved by hand, and isn't a relay's.
        on: `
# Ferry ramp: call button with two contacts
supply A 24 V AC
-S1 push-button make make
-K1 relay
-H1 lamp
-H2 lamp
sheet 1
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N
sheet 2
A:L -S1:23-24 -H2:X1-X2 A:N`,
        does: 'press -S1',
        right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'lit' },
      },
    ],
    another: {
      on: `
# Flour line: three lamps on two sheets
supply A 24 V AC
-B1 field-contact make
-K1 relay 3 poles
-H1 lamp
-H2 lamp
-H3 lamp
sheet 1
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N
A:L -K1:21-24 -H2:X1-X2 A:N
sheet 2
A:L -K1:31-34 -H3:X1-X2 A:N`,
      does: 'make -B1',
      right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'lit', '-H3': 'lit' },
      other: 'first-pole-only',
      // The second pole stands beside the coil: only whoever moves the first alone leaves it.
      instead: { '-H2': 'dark', '-H3': 'dark' },
      own: { '-H3': 'dark' },
    },
  },
  {
    id: 'latch-drops-out',
    shows: [
      {
        on: latch,
        does: 'press -S1; release -S1',
        right: { '-K1': 'operated', '-K1:B1': 'operated', '-H1': 'lit' },
        instead: { '-K1': 'rest', '-K1:B1': 'rest', '-H1': 'dark' },
      },
    ],
    nearly: [
      {
        // While the button is held, the set coil has its voltage.
        on: latch,
        does: 'press -S1',
        right: { '-K1': 'operated', '-K1:B1': 'operated', '-H1': 'lit' },
      },
      {
        on: latch,
        does: 'press -S1; release -S1; press -S2; release -S2',
        right: { '-K1': 'rest', '-K1:B1': 'rest', '-H1': 'dark' },
      },
    ],
    another: {
      on: `
# Ice works: compressor sealed in, light latched
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-S3 push-button make
-K1 latching-relay
-K2 relay 2 poles
-H1 lamp
-H2 lamp
A:L -S2:13-14 -K1:A1-A2 A:N
A:L -S3:13-14 -K1:B1-B2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N
A:L -S1:13-14 -K2:A1-A2 A:N
A:L -K2:11-14 -S1:14
A:L -K2:21-24 -H2:X1-X2 A:N`,
      does: 'press -S1; release -S1',
      right: { '-K1': 'rest', '-K1:B1': 'rest', '-K2': 'operated', '-H1': 'dark', '-H2': 'lit' },
      other: 'seal-forgotten',
      // A plain relay that holds itself drops out for whoever forgets the seal; the latching one wasn't set.
      instead: { '-K2': 'rest', '-H2': 'dark' },
    },
  },
];
