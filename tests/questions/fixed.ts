/** A few questions written by hand, for tests that need to know what is in them. */
import type { QuestionOf } from '../../shared/question.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

export const LINE = circuitOf(`
supply A 24 V DC
supply B 24 V DC
-F1 breaker
-F2 fuse
-B1 field-contact make "Bin 2 full"
-B2 limit-switch break "Gate shut"
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp green "Bin 2 not full"
-H2 lamp amber "Bin 2 full"
-H3 lamp white "Gate shut"
-A1 inputs 2 24V-3 "Line controller" "Bin 2 full" "Gate shut"
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
-F1:2 -B2:11-12 -K2:A1-A2 A:L-
-F1:2 -K1:11-12 -H1:X1-X2 A:L-
-K1:11-14 -H2:X1-X2 A:L-
-F1:2 -K2:11-14 -H3:X1-X2 A:L-
B:L+ -F2:1-2 -K1:21-24 -A1:I1-COM B:L-
-F2:2 -K2:21-24 -A1:I2`);

const base = { circuit: LINE, scenario: scenarioOf('make -B1'), family: 'fixed' };

export const LAMPS: QuestionOf<'lamp-states'> = {
  kind: 'lamp-states',
  ...base,
  asked: ['-H1', '-H2', '-H3'],
};
export const INPUTS: QuestionOf<'input-states'> = {
  kind: 'input-states',
  ...base,
  asked: ['-A1:I1', '-A1:I2'],
};
export const RELAYS: QuestionOf<'relay-states'> = { kind: 'relay-states', ...base, asked: ['-K1', '-K2'] };
export const STEPS: QuestionOf<'sequence'> = {
  kind: 'sequence',
  ...base,
  scenario: scenarioOf('make -B1; break -B2'),
  asked: [0, 1, 2].flatMap((after) => ['-H1', '-K2'].map((item) => ({ after, item }))),
};
export const METER: QuestionOf<'meter'> = {
  kind: 'meter',
  ...base,
  points: ['-K1:11', '-K1:12'],
  tolerance: 1,
};
export const LIVE: QuestionOf<'still-live'> = {
  kind: 'still-live',
  ...base,
  scenario: scenarioOf('make -B1; open -F1'),
  asked: ['-F1:1', '-F1:2', '-F2:2', '-K1:24'],
};
/** -H1 is to be dark when the bin is full; its contact is left out of the drawing. */
export const WIRING: QuestionOf<'wiring'> = {
  kind: 'wiring',
  circuit: {
    ...LINE,
    paths: LINE.paths.map((path, index) => (index === 2 ? { ...path, steps: path.steps.slice(2) } : path)),
  },
  scenario: scenarioOf(),
  family: 'fixed',
  ends: ['-F1:2', '-H1:X1'],
  choices: [
    ['-K1:11', '-K1:14'],
    ['-K1:12', '-K1:14'],
    ['-K1:11', '-K1:12'],
  ],
  wanted: [
    { acts: [], load: '-H1', state: 'lit' },
    { acts: scenarioOf('make -B1').acts, load: '-H1', state: 'dark' },
  ],
};

export const FIXED = [LAMPS, INPUTS, RELAYS, STEPS, METER, LIVE, WIRING] as const;
