/** What breaks a rule of practice is placed where it can be mended: on the line of the coil or lamp that is to be fed otherwise. */
import { expect, it } from 'vitest';
import { checkRules, placeOf, readCircuitWithPlaces } from '../../src/circuit/index.ts';
import { everyRule } from '../../src/solver/index.ts';

/** The rule and the line of its text, without the line's spaces. */
function found(text: string): string[] {
  const lines = text.trim().split('\n');
  const read = readCircuitWithPlaces(lines.join('\n'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { circuit, places } = read.value;
  return checkRules(circuit, everyRule).map(
    ({ code, concern }) => `${code}: ${lines[placeOf(circuit, places, concern).line - 1]}`,
  );
}

const JOG = `
# Flour line: jog past the stop
supply A 24 V DC earthed
-F1 breaker 4 A
-S1 push-button break
-S2 push-button make
-S3 push-button make
-K1 relay 2 poles
A:L+ -F1:1-2 -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-
-S1:12 -K1:11-14 -S2:14
-F1:2 -S3:13-14 -K1:A1`;
const LATCHED = `
# Ice works: fan on a latching relay
supply A 24 V DC earthed
-F1 breaker 4 A
-S1 push-button make
-S2 push-button make
-K1 latching-relay 2 poles
-K2 relay
A:L+ -F1:1-2 -S1:13-14 -K1:A1-A2 A:L-
-F1:2 -S2:13-14 -K1:B1-B2 A:L-
-F1:2 -K1:11-14 -K2:A1-A2 A:L-`;
const SHORT = `
# Nursery: a button across the supply
supply A 24 V DC earthed
supply B 24 V AC
-F1 breaker 4 A
-S1 push-button make
-S2 push-button make
-H1 lamp
A:L+ -F1:1-2 -H1:X1-X2 A:L-
-F1:2 -S1:13-14 A:L-
B:L -S2:13-14 B:N`;

it('a stop that a jog leads past is placed at the coil, and so is what starts by itself', () => {
  expect(found(JOG)).toEqual(['stop-wins: A:L+ -F1:1-2 -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-']);
  expect(found(LATCHED)).toEqual(['no-restart: -F1:2 -K1:11-14 -K2:A1-A2 A:L-']);
});

it('a short circuit is placed at what opens on it, and where nothing does at the supply', () => {
  expect(found(SHORT)).toContain('short-circuit: -F1 breaker 4 A');
  const unprotected = SHORT.replace('-F1:2 -S1:13-14 A:L-\n', '');
  expect(found(unprotected)).toContain('short-circuit: supply B 24 V AC');
});

it('two directions that aren’t locked are placed at the coil of the one that is let in', () => {
  const [first] = found(`
# Ferry ramp: raise and lower, locked one way only
supply A 24 V DC earthed
-F1 breaker 4 A
-S0 push-button break
-S1 push-button make
-S2 push-button make
-K1 contactor 3 main make break "Raise"
-K2 contactor 3 main make break "Lower"
A:L+ -F1:1-2 -S0:11-12 -S1:13-14 -K2:21-22 -K1:A1-A2 A:L-
-S0:12 -K1:13-14 -S1:14
-S0:12 -S2:13-14 -K2:A1-A2 A:L-
-S0:12 -K2:13-14 -S2:14`);
  expect(first).toBe('locked-both-ways: -S0:12 -S2:13-14 -K2:A1-A2 A:L-');
});

it('a green lamp that doesn’t go out is placed where it is fed, and a relay on the wrong contact at its coil', () => {
  const watched = (...lines: string[]) =>
    `
# Ice works: ammonia watched
supply A 24 V DC earthed
-F1 breaker 4 A
-B1 field-contact break "Ammonia found"
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp green "No ammonia"
-H2 lamp amber "Ammonia"
A:L+ -F1:1-2 -B1:11-12 -K1:A1-A2 A:L-
-B1:12 -K2:A1-A2 A:L-
${lines.join('\n')}`;
  const lit = '-F1:2 -K1:11-14 -H1:X1-X2 A:L-';
  const warns = '-F1:2 -K1:21-22 -H2:X1-X2 A:L-';
  expect(found(watched(lit, warns))).toEqual([]);
  expect(found(watched(lit, '-F1:2 -K2:11-14 -H1:X1', warns))).toEqual([`fails-safe: ${lit}`]);
  expect(found(watched('-F1:2 -K1:11-14 -H2:X1-X2 A:L-', '-K1:12 -H1:X1-X2 A:L-'))).toEqual([
    // The other one operates and releases with it, but no lamp hangs on it that could say anything wrong.
    'fails-safe: A:L+ -F1:1-2 -B1:11-12 -K1:A1-A2 A:L-',
  ]);
});
