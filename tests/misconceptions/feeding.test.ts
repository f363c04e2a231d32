/** What goes with a supply in the eyes of somebody who takes a device's opening for more than it is. */
import { describe, expect, it } from 'vitest';
import type { Act } from '../../shared/scenario.ts';
import { losingAlso, suppliesAt } from '../../src/misconceptions/feeding.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

const plant = circuitOf(`
# Flour line: two supplies with whatever may stand beside them
supply A 24 V AC
supply B 24 V DC
-X1 terminals 2
-Q1 isolator
-F1 fuse
-F2 fuse
-F3 breaker
-F4 breaker
-F5 breaker
-Q2 isolator 2 poles
-H1 lamp
-H2 lamp
-H3 lamp
-H4 lamp
-H5 lamp 24 V DC
-K1 relay
A:L -X1:1 -Q1:1-2 -F1:1-2 -H1:X1-X2 A:N
-Q1:1 -F2:1-2 -H2:X1-X2 A:N
-X1:1 -F3:1-2 -H3:X1-X2
A:N -H3:X2 -H4:X2-X1 -F4:2-1 A:L
B:L+ -Q2:1-2 -F5:1-2 -H5:X1-X2 B:L-
A:L -Q2:3-4 -H4:X1
A:L -K1:A1-A2 A:N`);

describe('the supplies beside a device', () => {
  const beside: readonly (readonly [string, readonly string[], string])[] = [
    ['-Q1', ['A'], 'behind a terminal'],
    ['-F1', [], 'behind a switch'],
    ['-F2', ['A'], 'on the terminal of a switch that the supply comes to'],
    ['-F3', ['A'], 'on a path that begins at a terminal'],
    ['-F4', ['A'], 'on a path written from the return'],
    ['-F5', [], 'behind a pole on one of two supplies'],
    ['-Q2', ['A', 'B'], 'a pole on each'],
    ['-H3', ['A'], 'on the return'],
    ['-H5', ['B'], 'on the return of the other'],
  ];
  it.each(beside)('of %s are %j: %s', (device, supplies) => {
    expect(suppliesAt(plant, device)).toEqual(supplies);
  });

  it('are not those of a device whose designation begins alike', () => {
    const ten = circuitOf(`
supply A 24 V AC
-F1 fuse
-F10 fuse
-H1 lamp
A:L -F10:1-2 -F1:1-2 -H1:X1-X2 A:N`);
    expect(suppliesAt(ten, '-F1')).toEqual([]);
    expect(suppliesAt(ten, '-F10')).toEqual(['A']);
  });
});

describe('what is thought to be lost', () => {
  const itself = (concerned: readonly string[]): readonly string[] => concerned;
  const other = (concerned: readonly string[]): readonly string[] =>
    ['A', 'B'].filter((name) => !concerned.includes(name));
  const acts = (text: string): readonly Act[] => scenarioOf(text).acts;
  const lost = (does: string, also: typeof itself, ofSupplies = false, faults = '') =>
    losingAlso(scenarioOf(does, faults), plant, also, ofSupplies);

  it('goes right after what is opened and comes back right after what is closed', () => {
    expect(lost('open -Q1; wait 1 s; close -Q1', itself)?.acts).toEqual(
      acts('open -Q1; fail A; wait 1 s; close -Q1; restore A'),
    );
    expect(lost('open -Q1', other)?.acts).toEqual(acts('open -Q1; fail B'));
  });

  it('is both supplies where the device has a pole on each', () => {
    expect(lost('open -Q2', itself)?.acts).toEqual(acts('open -Q2; fail A; fail B'));
  });

  it('counts the loss of a whole supply only where the idea is about supplies', () => {
    expect(lost('fail A; restore A', other, true)?.acts).toEqual(
      acts('fail A; fail B; restore A; restore B'),
    );
    expect(lost('fail A; restore A', other, false)).toBeUndefined();
  });

  it('is lost from the start where a fuse has blown, before anything is done', () => {
    const seen = lost('open -F5', itself, false, '-F2 blown');
    expect(seen?.acts).toEqual(acts('fail A; open -F5'));
    expect(seen?.faults).toEqual(scenarioOf('', '-F2 blown').faults);
  });

  it('is nothing where no supply is concerned, or nothing goes with it', () => {
    expect(lost('open -F1; open -F5; close -F1', itself)).toBeUndefined();
    expect(lost('', itself, true, '-F1 blown')).toBeUndefined();
    expect(lost('', itself, true, '-H1:X2 broken')).toBeUndefined();
    expect(lost('', itself, true, '-K1 stuck')).toBeUndefined();
    expect(lost('wait 1 s', itself, true)).toBeUndefined();
    expect(lost('open -Q2', other)).toBeUndefined();
    expect(lost('open -F1', () => ['B'])).toBeUndefined();
    expect(lost('', () => ['B'], true, '-F1 blown')).toBeUndefined();
  });
});
