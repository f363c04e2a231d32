/** What a contact does: make and break, the legs of a changeover, the poles of a relay. */
import type { ThreeCircuits } from './three-circuits.ts';

const ventFan = `
# Nursery: vent fan running and tripped
supply A 24 V AC
-K1 relay
-F1 breaker
-B1 field-contact make
-H1 lamp
-H2 lamp
A:L -F1:1-2 -B1:13-14 -K1:A1-A2 A:N
-F1:2 -K1:11-12 -H1:X1-X2 A:N
-K1:11-14 -H2:X1-X2 A:N`;
const rampContactor = `
# Ferry ramp: -B1 has a changeover, the contactor's make and break are contacts apart
supply A 24 V AC
-B1 field-contact changeover
-K1 contactor 0 main 11
-H1 lamp
-H2 lamp
-H3 lamp
A:L -B1:11-12 -H1:X1-X2 A:N
-B1:11-14 -K1:A1-A2 A:N
A:L -K1:13-14 -H2:X1-X2 A:N
A:L -K1:21-22 -H3:X1-X2 A:N`;

export const aboutContacts: readonly ThreeCircuits[] = [
  {
    id: 'make-for-break',
    shows: [
      {
        on: ventFan,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit' },
        // -B1 is no relay's contact and is read right, so -K1 operates; then 11-12 would be closed and 11-14 open.
        instead: { '-H1': 'lit', '-H2': 'dark' },
      },
      {
        on: ventFan,
        does: '',
        right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' },
        // At rest the other way round.
        instead: { '-H1': 'dark', '-H2': 'lit' },
      },
    ],
    nearly: [
      {
        // Of a make and a break side by side one is closed, whichever is taken for which.
        on: `
# Flour line: sifter lamp
supply A 24 V AC
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-12 -H1:X1-X2 A:N
A:L -K1:21-24 -H1:X1`,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'lit' },
      },
      {
        // A welded contact is told as closed, so there is nothing to take for something else.
        on: ventFan,
        does: '',
        faults: '-K1:11-14 welded',
        right: { '-K1': 'rest', '-H1': 'dark', '-H2': 'lit' },
      },
    ],
    another: {
      on: ventFan,
      does: 'make -B1',
      right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit' },
      other: 'break-never-opens',
      // 11-12 stays closed beside 11-14: both lit. Whoever exchanges the two has one lit as well, the other one.
      instead: { '-H1': 'lit' },
      own: { '-H1': 'lit', '-H2': 'dark' },
    },
  },
  {
    id: 'break-never-opens',
    shows: [
      {
        on: `
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
A:L -K2:21-24 -H2:X1-X2 A:N`,
        does: 'press -S1; press -S2',
        right: { '-K1': 'operated', '-K2': 'rest', '-H1': 'lit', '-H2': 'dark' },
        // -K1 11-12 would still be closed, so -K2 operates too; -K2 11-12 would be closed as well, and -K1 stays.
        instead: { '-K2': 'operated', '-H2': 'lit' },
      },
    ],
    nearly: [
      {
        // The break contact of a button opens for whoever has this idea; the relay's is closed anyway at rest.
        on: `
# Ice works: stop lamp
supply A 24 V AC
-S0 push-button break 21-22
-S1 push-button make
-K1 relay
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -S0:21-22 -K1:11-12 -H1:X1-X2 A:N`,
        does: 'press -S0',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        // The make contact is open at rest for them too.
        on: ventFan,
        does: '',
        right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' },
      },
    ],
    another: {
      on: ventFan,
      does: '',
      right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' },
      other: 'both-legs-closed',
      // At rest the make leg carries current only for whoever closes both.
      instead: { '-H2': 'lit' },
    },
  },
  {
    id: 'both-legs-closed',
    shows: [
      {
        on: ventFan,
        does: '',
        right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' },
        instead: { '-H2': 'lit' },
      },
      {
        on: ventFan,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit' },
        instead: { '-H1': 'lit' },
      },
    ],
    nearly: [
      {
        // No relay has a changeover here: the contactor's two contacts have nothing in common, -B1 is none of a relay.
        on: rampContactor,
        does: '',
        right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark', '-H3': 'lit' },
      },
    ],
    another: {
      on: rampContactor,
      does: '',
      right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark', '-H3': 'lit' },
      other: 'open-contact-followed',
      // 13-14 is followed although it is open; it is no leg of a changeover.
      instead: { '-H2': 'lit' },
    },
  },
  {
    id: 'open-contact-followed',
    shows: [
      {
        on: `
# Flour line: screw and elevator
supply A 24 V AC
-K1 relay
-B1 field-contact make
-K2 relay
-H1 lamp
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K2:A1-A2 A:N
-K1:12 -H2:X1-X2 A:N
A:L -K2:11-14 -H1:X1-X2 A:N`,
        does: '',
        right: { '-K1': 'rest', '-K2': 'rest', '-H1': 'dark', '-H2': 'lit' },
        // Through 11-14 of -K1 to the coil of -K2, and through 11-14 of -K2 to the lamp; -B1 is none of a relay.
        instead: { '-K2': 'operated', '-H1': 'lit' },
      },
    ],
    nearly: [
      {
        // The path is open at the button as well, which isn't followed through.
        on: `
# Ice works: lamp test
supply A 24 V AC
-B1 field-contact make
-S1 push-button make
-K1 relay
-H1 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -S1:13-14 -K1:11-14 -H1:X1-X2 A:N`,
        does: '',
        right: { '-K1': 'rest', '-H1': 'dark' },
      },
      {
        // The make contact is closed, and the break contact open for them too.
        on: ventFan,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit' },
      },
    ],
    another: {
      on: ventFan,
      does: 'make -B1',
      right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit' },
      other: 'break-never-opens',
      instead: { '-H1': 'lit' },
    },
  },
  {
    id: 'first-pole-only',
    shows: [
      {
        on: `
# Nursery: misting pump
supply A 24 V AC
-B1 float-switch make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N
A:L -K1:21-24 -H2:X1-X2 A:N`,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'lit' },
        instead: { '-H2': 'dark' },
      },
      {
        on: `
# Flour line: roller mill
supply A 24 V AC
-S1 push-button make
-K1 contactor 3 main 11
-H1 lamp
-H2 lamp
-H3 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:13-14 -H1:X1-X2 A:N
A:L -K1:21-22 -H2:X1-X2 A:N
A:L -K1:3-4 -H3:X1-X2 A:N`,
        does: 'press -S1',
        right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'dark', '-H3': 'lit' },
        // The second auxiliary contact is left closed; main contacts move.
        instead: { '-H2': 'lit' },
      },
    ],
    nearly: [
      {
        // One auxiliary contact, which is the first; the main contacts move for whoever has this idea.
        on: `
# Ice works: crusher
supply A 24 V AC
-S1 push-button make
-K1 contactor 3 main make
-H1 lamp
-H2 lamp
-H3 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:1-2 -H1:X1-X2 A:N
A:L -K1:5-6 -H2:X1-X2 A:N
A:L -K1:13-14 -H3:X1-X2 A:N`,
        does: 'press -S1',
        right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'lit', '-H3': 'lit' },
      },
    ],
    another: {
      on: `
# Ferry ramp: deck and bridge
supply A 24 V AC
-B1 limit-switch make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
sheet 1
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:21-24 -H2:X1-X2 A:N
sheet 2
A:L -K1:11-14 -H1:X1-X2 A:N`,
      does: 'make -B1',
      right: { '-K1': 'operated', '-H1': 'lit', '-H2': 'lit' },
      other: 'contacts-beside-coil',
      // On the other sheet stands the first pole; whoever moves only that one leaves the second, beside the coil.
      instead: { '-H1': 'dark' },
      own: { '-H2': 'dark' },
    },
  },
];
