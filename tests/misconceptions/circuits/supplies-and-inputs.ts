/** Supplies, the way back to them, and what the plant and a controller make of contacts. */
import type { ThreeCircuits } from './three-circuits.ts';

const twoSupplies = `
# Nursery: lamps on one supply, controller on the other
supply A 24 V AC
supply B 24 V DC
-F1 fuse
-F2 breaker
-Q2 isolator
-H1 lamp
-H2 lamp
-A1 inputs 1 24V-3
A:L -F1:1-2 -F2:1-2 -H1:X1-X2 A:N
A:L -H2:X1-X2 A:N
B:L+ -Q2:1-2 -A1:I1-COM B:L-`;
const allBehind = `
# Ice works: everything behind the main switch
supply A 24 V AC
-Q1 isolator
-F1 breaker
-H1 lamp
-H2 lamp
A:L -Q1:1-2 -H1:X1-X2 A:N
-Q1:2 -F1:1-2 -H2:X1-X2 A:N`;
const references = (a: string, b: string): string => `
# Flour line: two supplies
supply A 24 V AC ${a}
supply B 24 V DC ${b}
-H1 lamp
-A1 inputs 1 24V-3
A:L -H1:X1-X2 A:N
B:L+ -A1:I1-COM B:L-`;
const between = [['A:L', 'B:L-']] as const;
const returnSwitched = `
# Ferry ramp: -Q2 in the return
supply A 24 V AC
-Q1 isolator
-Q2 isolator
-K1 relay
-B1 field-contact make
-H1 lamp
A:L -Q1:1-2 -H1:X1-X2 -Q2:1-2 A:N
A:L -B1:13-14 -K1:A1-A2 A:N`;
const vent = `
# Nursery: vent, its field contact with two makes
supply A 24 V AC
-B1 field-contact make make
-K1 relay
-H1 lamp
-H2 lamp
-H3 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -B1:23-24 -H3:X1-X2 A:N
A:L -K1:11-12 -H1:X1-X2 A:N
-K1:11-14 -H2:X1-X2 A:N`;
const doorInputs = `
# Ice works: door, drawn closed by nothing
supply B 24 V DC
-B1 limit-switch break 21-22
-B2 field-contact make
-A1 inputs 2 24V-3
B:L+ -B1:21-22 -A1:I1-COM B:L-
B:L+ -B2:13-14 -A1:I2`;

export const aboutSuppliesAndInputs: readonly ThreeCircuits[] = [
  {
    id: 'one-supply',
    shows: [
      {
        on: twoSupplies,
        does: 'open -F1',
        right: { '-H1': 'dark', '-H2': 'lit', '-A1:I1': '1' },
        // The fuse is the first thing behind A: with it, B is taken to be gone. -H2 is before the fuse.
        instead: { '-A1:I1': '0' },
      },
      {
        on: twoSupplies,
        does: 'fail A',
        right: { '-H1': 'dark', '-H2': 'dark', '-A1:I1': '1' },
        instead: { '-A1:I1': '0' },
      },
      {
        on: twoSupplies,
        does: '',
        faults: '-F1 blown',
        right: { '-H1': 'dark', '-H2': 'lit', '-A1:I1': '1' },
        instead: { '-A1:I1': '0' },
      },
    ],
    nearly: [
      {
        // What was switched off is switched on again, and all with it.
        on: twoSupplies,
        does: 'open -F1; close -F1; fail A; restore A',
        right: { '-H1': 'lit', '-H2': 'lit', '-A1:I1': '1' },
      },
      {
        // -F2 is one branch for whoever has this idea too.
        on: twoSupplies,
        does: 'open -F2',
        right: { '-H1': 'dark', '-H2': 'lit', '-A1:I1': '1' },
      },
    ],
    another: {
      on: twoSupplies,
      does: 'open -F1',
      right: { '-H1': 'dark', '-H2': 'lit', '-A1:I1': '1' },
      other: 'line-side-dead',
      // -H2 hangs before the fuse; B is another supply.
      instead: { '-H2': 'dark' },
      own: { '-A1:I1': '0' },
    },
  },
  {
    id: 'line-side-dead',
    shows: [
      {
        on: twoSupplies,
        does: 'open -F1',
        right: { '-H1': 'dark', '-H2': 'lit', '-A1:I1': '1' },
        instead: { '-H2': 'dark' },
      },
      {
        on: twoSupplies,
        does: '',
        faults: '-F1 blown',
        right: { '-H1': 'dark', '-H2': 'lit', '-A1:I1': '1' },
        instead: { '-H2': 'dark' },
      },
    ],
    nearly: [
      // Nothing hangs before the main switch.
      { on: allBehind, does: 'open -Q1', right: { '-H1': 'dark', '-H2': 'dark' } },
      // -F1 isn't beside the supply: what it hangs on stays live for whoever has this idea too.
      { on: allBehind, does: 'open -F1', right: { '-H1': 'lit', '-H2': 'dark' } },
      {
        // The supply itself is off, and the other one isn't.
        on: twoSupplies,
        does: 'fail A',
        right: { '-H1': 'dark', '-H2': 'dark', '-A1:I1': '1' },
      },
      {
        on: twoSupplies,
        does: 'open -F1; close -F1',
        right: { '-H1': 'lit', '-H2': 'lit', '-A1:I1': '1' },
      },
    ],
    another: {
      on: twoSupplies,
      does: 'fail A',
      right: { '-H1': 'dark', '-H2': 'dark', '-A1:I1': '1' },
      other: 'one-supply',
      instead: { '-A1:I1': '0' },
    },
  },
  {
    id: 'common-reference',
    shows: [
      {
        on: references('', ''),
        does: '',
        meters: between,
        right: { '-H1': 'lit', '-A1:I1': '1', 'A:L to B:L-': 'nothing' },
        // With N and L- taken for one point, L has its 24 V against it.
        instead: { 'A:L to B:L-': '24 V' },
      },
      {
        // Earth helps nothing as long as only one of the two is bonded to it.
        on: references('earthed', ''),
        does: '',
        meters: between,
        right: { '-H1': 'lit', '-A1:I1': '1', 'A:L to B:L-': 'nothing' },
        instead: { 'A:L to B:L-': '24 V' },
      },
    ],
    nearly: [
      {
        on: references('earthed', 'earthed'),
        does: '',
        meters: between,
        right: { '-H1': 'lit', '-A1:I1': '1', 'A:L to B:L-': '24 V' },
      },
      {
        on: references('', ''),
        does: '',
        meters: [['B:L+', 'B:L-']],
        right: { '-H1': 'lit', '-A1:I1': '1', 'B:L+ to B:L-': '24 V' },
      },
    ],
    another: {
      on: twoSupplies,
      does: 'fail A',
      meters: between,
      right: { '-H1': 'dark', '-H2': 'dark', '-A1:I1': '1', 'A:L to B:L-': 'nothing' },
      other: 'one-supply',
      instead: { '-A1:I1': '0' },
      // A that has failed holds L and N together, so against B's return there are 0 V where there is nothing.
      own: { 'A:L to B:L-': '0 V' },
    },
  },
  {
    id: 'return-ignored',
    shows: [
      {
        on: returnSwitched,
        does: '',
        faults: '-H1:X2 broken',
        right: { '-H1': 'dark', '-K1': 'rest' },
        instead: { '-H1': 'lit' },
      },
      {
        on: returnSwitched,
        does: 'open -Q2',
        right: { '-H1': 'dark', '-K1': 'rest' },
        instead: { '-H1': 'lit' },
      },
      {
        // Of a supply with three phases the return is N; each lamp has a switch of its own in it.
        on: `
# Flour line: lamps on three phases
supply P 400 V 3AC
-Q1 isolator
-Q2 isolator
-H1 lamp 230 V AC
-H2 lamp 230 V AC
P:L1 -H1:X1-X2 -Q1:1-2 P:N
P:L2 -H2:X1-X2 -Q2:1-2 P:N`,
        does: 'open -Q1; open -Q2',
        right: { '-H1': 'dark', '-H2': 'dark' },
        instead: { '-H1': 'lit', '-H2': 'lit' },
      },
    ],
    nearly: [
      // The way to the lamp is interrupted, which isn't overlooked.
      {
        on: returnSwitched,
        does: '',
        faults: '-H1:X1 broken',
        right: { '-H1': 'dark', '-K1': 'rest' },
      },
      { on: returnSwitched, does: 'open -Q1', right: { '-H1': 'dark', '-K1': 'rest' } },
      {
        // The lamp's other end is moved from the return to the line: both ends on the line, a contact that is no return.
        on: `
# Flour line: lamp between two poles of the supply
supply A 24 V AC
-B1 field-contact make
-K1 relay
-H1 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -H1:X1-X2 -K1:11-12 A:N
-K1:14 A:L`,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'dark' },
      },
      {
        // The same between phases: from L1 to L2 instead of to N.
        on: `
# Ice works: heater lamp on one phase or between two
supply P 400 V 3AC
-S1 selector Low/High make make
-S2 selector Low/High break
-H1 lamp 230 V AC
P:L1 -H1:X1-X2 -S2:11-12 P:N
P:L2 -S1:13-14 -H1:X2`,
        does: 'turn -S2 High; turn -S1 High',
        right: { '-H1': 'lit' },
      },
    ],
    another: {
      on: `
# Ice works: lamp with its relay's contact before it and a switch behind it
supply A 24 V AC
-Q2 isolator
-B1 field-contact make
-K1 relay
-H1 lamp
A:L -K1:11-14 -H1:X1-X2 -Q2:1-2 A:N
A:L -B1:13-14 -K1:A1-A2 A:N`,
      does: '',
      right: { '-K1': 'rest', '-H1': 'dark' },
      other: 'open-contact-followed',
      // The return is closed; open is the contact on the way there.
      instead: { '-H1': 'lit' },
    },
  },
  {
    id: 'input-inverted',
    shows: [
      {
        on: doorInputs,
        does: '',
        right: { '-A1:I1': '1', '-A1:I2': '0' },
        instead: { '-A1:I1': '0' },
      },
      {
        on: doorInputs,
        does: 'break -B1',
        right: { '-A1:I1': '0', '-A1:I2': '0' },
        instead: { '-A1:I1': '1' },
      },
    ],
    nearly: [
      {
        // Break contacts of a button and of a relay before inputs, and one of the plant before a lamp.
        on: `
# Ferry ramp: stop button and ready relay on inputs
supply B 24 V DC
-S0 push-button break 21-22
-B1 field-contact make
-B2 limit-switch break 21-22
-K1 relay
-H1 lamp
-A1 inputs 3 24V-3
B:L+ -S0:21-22 -A1:I1-COM B:L-
B:L+ -K1:11-12 -A1:I2
B:L+ -B1:13-14 -A1:I3
B:L+ -B2:21-22 -H1:X1-X2 B:L-
-B1:14 -K1:A1-A2 B:L-`,
        does: '',
        right: { '-K1': 'rest', '-H1': 'lit', '-A1:I1': '1', '-A1:I2': '1', '-A1:I3': '0' },
      },
    ],
    another: {
      on: doorInputs,
      does: 'make -B2',
      right: { '-A1:I1': '1', '-A1:I2': '1' },
      other: 'normal-is-running',
      instead: { '-A1:I2': '0' },
      own: { '-A1:I1': '0' },
    },
  },
  {
    id: 'normal-is-running',
    shows: [
      {
        on: vent,
        does: 'make -B1',
        right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit', '-H3': 'lit' },
        instead: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark', '-H3': 'dark' },
      },
      {
        on: doorInputs,
        does: 'break -B1',
        right: { '-A1:I1': '0', '-A1:I2': '0' },
        instead: { '-A1:I1': '1' },
      },
    ],
    nearly: [
      {
        on: vent,
        does: 'make -B1; break -B1',
        right: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark', '-H3': 'dark' },
      },
      // Isolators and buttons are no contacts of the plant: what is done to them is done.
      { on: allBehind, does: 'open -Q1', right: { '-H1': 'dark', '-H2': 'dark' } },
    ],
    another: {
      on: vent,
      does: 'make -B1',
      right: { '-K1': 'operated', '-H1': 'dark', '-H2': 'lit', '-H3': 'lit' },
      other: 'nothing-moves',
      // The field contact has moved (-H3), the relay hasn't.
      instead: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark' },
      own: { '-K1': 'rest', '-H1': 'lit', '-H2': 'dark', '-H3': 'dark' },
    },
  },
];
