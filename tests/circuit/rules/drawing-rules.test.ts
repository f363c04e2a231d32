import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkRules,
  drawingRules,
  problemOf,
  type Rule,
  readCircuitWithPlaces,
} from '../../../src/circuit/index.ts';
import { english, told } from '../../support/in-english.ts';
import { anyCircuit } from '../arbitrary-circuit.ts';
import { circuitOf, PATIENCE, whole } from '../reading.ts';

describe('the drawing rules', () => {
  it('each have a name of their own, a reason and a source that says where it is from', () => {
    const names = drawingRules.map(({ name }) => name);
    expect(names).toEqual([...new Set(names)]);
    for (const { name } of drawingRules) {
      expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(english.ruleReasons[name as keyof typeof english.ruleReasons]).toMatch(/^[A-Z].*\.$/);
      expect(english.ruleSources[name as keyof typeof english.ruleSources]).toMatch(
        /IEC|EN |NFPA|common practice, no source/,
      );
    }
  });

  it('find nothing in a sound drawing of a pump with seal-in', () => {
    const circuit = circuitOf(`supply A 24 V DC earthed
-F1 breaker 2 A
-S0 emergency-stop break
-S1 push-button make white "Start"
-K1 relay 2 poles
-H1 lamp green "Running"
A:L+  -F1:1-2  -S0:11-12  -S1:13-14  -K1:A1-A2  A:L-
-S0:12  -K1:11-14  -S1:14
-F1:2  -K1:21-24  -H1:X1-X2  A:L-`);
    expect(checkRules(circuit)).toEqual([]);
  });

  it('are all broken by one bad drawing, each finding on a line of it', () => {
    const text = `supply A 24 V AC
supply B 3.3 V DC
-S1 push-button make 13-15
-K1 relay 3 poles 230 V AC
-H1 lamp
-H2 lamp
A:L  -S1:13-15  -K1:A1-A2  -K1:11-12  A:N
A:L  -K1:24  -H1:X1
A:L  -K1:32-34  -H2:X1-X2  A:N
B:L+  A:N`;
    const { circuit, places } = whole(readCircuitWithPlaces(text));
    const problems = checkRules(circuit).map((finding) => problemOf(finding, circuit, places));
    expect(problems.map(({ line, column, code }) => `${line}:${column} ${code}`)).toEqual([
      '3:17 terminal-number',
      '5:1 load-not-connected',
      '8:6 common-unused',
      '9:6 only-legs-wired',
      '10:7 supplies-joined',
      '7:17 contact-on-return',
      '7:17 wrong-voltage',
    ]);
  });

  it('can be given: another floor adds its own, with the same shape', () => {
    const noLamps: Rule<{ says: 'no-lamps'; name: string }> = {
      name: 'no-lamps',
      check: (_circuit, { devices }) =>
        [...devices.values()]
          .filter(({ device }) => device.kind === 'lamp')
          .map(({ device, index }) => ({
            said: { says: 'no-lamps', name: device.name },
            concern: { kind: 'device', index },
          })),
    };
    const circuit = circuitOf('supply A 24 V AC\n-K1 relay\n-H1 lamp');
    expect(checkRules(circuit, [noLamps])).toEqual([
      {
        code: 'no-lamps',
        said: { says: 'no-lamps', name: '-H1' },
        concern: { kind: 'device', index: 1 },
      },
    ]);
  });

  it(
    'speak of any circuit that can be read, in whole sentences',
    () => {
      fc.assert(
        fc.property(anyCircuit, (circuit) => {
          for (const { message, hint } of told(
            checkRules(circuit).map((finding) => problemOf(finding, circuit)),
          )) {
            expect(message).toMatch(/^[A-Z-].*\.$/s);
            expect(hint).toMatch(/^[A-Z].*\.$/s);
            expect(`${message}${hint}`).not.toMatch(/undefined|NaN|\*/);
          }
        }),
        { numRuns: 500 },
      );
    },
    PATIENCE,
  );
});
