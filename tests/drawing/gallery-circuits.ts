/** Circuits whose drawings are kept as approved pictures. */
import type { Circuit } from '../../shared/circuit.ts';
import { readCircuit } from '../../src/circuit/index.ts';

const TEXTS = {
  'vent-fan': `
# Vent fan 2: running and tripped
supply A 24 V AC
-F1  breaker       "Control supply"
-B1  field-contact make "Fan tripped"
-K3  relay 2 poles
-H1  lamp green    "Fan healthy"
-H2  lamp amber    "Fan tripped"

A:L  -F1:1-2  -B1:13-14  -K3:A1-A2  A:N
-F1:2  -K3:11-12  -H1:X1-X2  A:N
-K3:11-14  -H2:X1-X2  A:N
`,
  'mist-line': `
# Nursery: mist line started and stopped
supply A 24 V DC
-F1 fuse 1 pole 4 A "Control supply"
-S0 push-button break red "Stop"
-S1 push-button make green "Start"
-K1 relay 3 poles "Mist line runs"
-Y1 valve "Mist line"
-H1 lamp green "Running"
-H2 lamp white "Standing"

A:L+  -F1:1-2  -S0:11-12  -S1:13-14  -K1:A1-A2  A:L-
-S0:12  -K1:11-14  -S1:14
-F1:2  -K1:21-24  -Y1:A1-A2  A:L-
-F1:2  -K1:31-34  -H1:X1-X2  A:L-
-K1:31-32  -H2:X1-X2  A:L-
`,
  'ramp-hoist': `
# Ferry ramp: hoist in two directions
supply P 400 V 3AC
supply A 24 V AC
-Q1 isolator 3 poles
-F2 overload "Hoist"
-F1 fuse 1 pole 2 A
-K1 contactor 3 mains make 13-14 break 21-22 "Raise"
-K2 contactor 3 mains make 13-14 break 21-22 "Lower"
-M1 motor 230 V "Ramp hoist"
-S0 emergency-stop break
-S1 push-button make white "Raise"
-S2 push-button make black "Lower"
-B1 limit-switch break "Top reached"
-B2 limit-switch break "Bottom reached"

P:L1  -Q1:1-2  -K1:1-2  -F2:1-2  -M1:U1
P:L2  -Q1:3-4  -K1:3-4  -F2:3-4  -M1:V1
P:L3  -Q1:5-6  -K1:5-6  -F2:5-6  -M1:W1
-Q1:2  -K2:1-2  -F2:5
-Q1:4  -K2:3-4  -F2:3
-Q1:6  -K2:5-6  -F2:1
A:L  -F1:1-2  -S0:11-12  -F2:95-96  -S1:13-14  -K2:21-22  -B1:11-12  -K1:A1-A2  A:N
-S1:13  -K1:13-14  -S1:14
-F2:96  -S2:13-14  -K1:21-22  -B2:11-12  -K2:A1-A2  A:N
-S2:13  -K2:13-14  -S2:14
`,
  'brine-pump': `
# Ice works: brine pump with late stop
supply A 24 V AC
-Q1 isolator 2 poles "Control supply"
-B1 float-switch make "Brine wanted"
-K1 off-delay 30 s 2 poles "Brine pump"
-K2 on-delay 5 s 1 pole "Flow not proved"
-B2 field-contact break "Flow present"
-H1 lamp green "Pump runs"
-H2 lamp red "No flow"
-H3 sounder "No flow"

A:L  -Q1:1-2  -B1:13-14  -K1:A1-A2  -Q1:4
-Q1:2  -K1:15-18  -H1:X1-X2  -Q1:4
-Q1:2  -K1:25-28  -B2:11-12  -K2:A1-A2  -Q1:4
-Q1:2  -K2:15-18  -H2:X1-X2  -Q1:4
-K2:18  -H3:X1-X2  -Q1:4
-Q1:4-3  A:N
`,
  'two-supplies': `
# Flour line: one relay, two supplies
supply A 24 V AC
supply B 24 V DC
-F1 fuse 1 pole 2 A
-B1 field-contact make "Sifter runs"
-K1 relay 2 poles "Sifter runs"
-H1 lamp green "Sifter runs"
-H2 lamp white "Sifter stands"
-A1 inputs 2 24V-1 "Line controller" "Sifter runs" "Sifter stands"

sheet 1 "Lamps"
A:L  -F1:1-2  -B1:13-14  -K1:A1-A2  A:N
-F1:2  -K1:11-12  -H2:X1-X2  A:N
-K1:11-14  -H1:X1-X2  A:N
sheet 2 "Controller"
B:L+  -K1:21-24  -A1:I1-COM  B:L-
-K1:21-22  -A1:I2-COM  B:L-
`,
  'two-switches': `
# Ice store: light worked from both doors
supply A 24 V AC
-S1 selector off/on changeover on 11-12-14 "North door"
-S2 selector off/on changeover on 11-12-14 "South door"
-X1 terminals 2
-H1 lamp white "Store light"

A:L  -X1:1  -S1:11-12  -S2:12-11  -H1:X1-X2  -X1:2  A:N
-S1:14  -S2:14
`,
} as const;

export type GalleryCircuit = keyof typeof TEXTS;

export function galleryCircuit(name: GalleryCircuit): Circuit {
  const read = readCircuit(TEXTS[name]);
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.problems, null, 1)}`);
  return read.value;
}
