/** What makes a question hard, counted by hand on circuits small enough to count. */
import { describe, expect, it } from 'vitest';
import type { Fault } from '../../shared/scenario.ts';
import { type Accepted, type Draft, difficultyOf, featuresOf } from '../../src/generator/index.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

type Asked = Partial<Pick<Draft, 'lamps' | 'inputs' | 'relays'>>;

/** An accepted draft, as far as its features are read off it. */
const accepted = (text: string, asked: Asked = {}, acts = '', faults: readonly Fault[] = []): Accepted =>
  ({
    draft: {
      circuit: circuitOf(text),
      scenario: { ...scenarioOf(acts), faults: [...faults] },
      lamps: [],
      inputs: [],
      relays: [],
      ...asked,
    },
    tellsApart: ['one', 'two'],
  }) as unknown as Accepted;
const features = (...of: Parameters<typeof accepted>) => featuresOf(accepted(...of));

const MISTING = `
supply A 24 V AC
supply B 24 V DC
-F1 fuse
-B1 field-contact make
-S1 push-button make
-K1 relay 3 poles
-K2 on-delay 5 s 2 poles
-H1 lamp
-A1 inputs 1 24V-1
sheet 1
A:L  -F1:1-2  -S1:13-14  -K1:A1-A2  A:N
-F1:2  -K1:11-14  -S1:14
-F1:2  -B1:13-14  -K1:21-24  -K2:A1-A2  A:N
sheet 2
-F1:2  -K2:15-18  -H1:X1-X2  A:N
B:L+  -K1:31-34  -A1:I1-COM  B:L-
`;
const WHOLE: Asked = { lamps: ['-H1'], inputs: ['-A1:I1'], relays: ['-K1', '-K2'] };
const ACTS = 'press -S1; release -S1; make -B1; wait 6 s';

const HEAD = `
supply A 24 V DC
-F1 fuse
-B1 field-contact make
-B2 field-contact make
-B3 field-contact make
-K1 relay 3 poles
-K2 relay 3 poles
-K3 relay 3 poles
-H1 lamp
-H2 lamp
`;

describe('the features of a question', () => {
  it('are read off its circuit, what is done, what is wrong, what is asked and what it tells apart', () => {
    expect(features(MISTING, WHOLE, ACTS)).toEqual({
      levels: 2,
      contacts: 1.5,
      parallel: 1,
      elsewhere: 2,
      memories: 1,
      timers: 1,
      acts: 4,
      faults: 0,
      asked: 4,
      tellsApart: 2,
    });
    const faults: Fault[] = [{ kind: 'blown', device: '-F1' }];
    expect(features(MISTING, { lamps: ['-H1'], inputs: ['-H1'] }, '', faults)).toMatchObject({
      acts: 0,
      faults: 1,
      asked: 1,
    });
  });

  it('are the same with a fuse or a breaker behind a contact as without', () => {
    const control = (fused: string): string => `
supply A 24 V AC
-F1 fuse
-F2 breaker
-B1 field-contact make
-B2 field-contact make
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp
A:L  -F1:1-2  -B1:13-14  -K1:A1-A2  A:N
-F1:2  -K1:11-14  ${fused}  -B2:13-14  -K2:A1-A2  A:N
-B2:13  -K2:11-14  -B2:14
-F1:2  -K2:21-24  -H1:X1-X2  A:N`;
    const asked = { lamps: ['-H1'], relays: ['-K1', '-K2'] };
    const plain = features(control('').replace('-F2 breaker\n', ''), asked);
    // By hand: -B1; -K1, -B2 and the seal of -K2 beside it; -K2.
    expect(plain).toMatchObject({ levels: 2, contacts: 5 / 3, parallel: 1, memories: 1 });
    expect(features(control('-F2:1-2'), asked)).toEqual(plain);
  });

  it('count two ways that come together behind a breaker', () => {
    const beside = `
supply A 24 V AC
-F2 breaker
-B1 field-contact make
-B2 field-contact make
-H1 lamp
A:L  -B1:13-14  -F2:1-2  -H1:X1-X2  A:N
A:L  -B2:13-14  -F2:2`;
    expect(features(beside, { lamps: ['-H1'] })).toMatchObject({ contacts: 2, parallel: 1 });
  });

  it('make up the difficulty, each with its weight', () => {
    const first = accepted(MISTING, WHOLE, ACTS);
    // By docs/generator.md: 2 levels, 1.5 contacts, 1 way beside another, 2 elsewhere, a memory, a timer, 4 acts, 4 asked, 2 told.
    expect(difficultyOf(first)).toBeCloseTo(1.2 + 0.45 + 0.2 + 0.2 + 0.5 + 0.5 + 1 + 0.6 + 0.1, 9);
    const faults: Fault[] = [{ kind: 'blown', device: '-F1' }];
    expect(difficultyOf(accepted(MISTING, WHOLE, ACTS, faults)) - difficultyOf(first)).toBeCloseTo(0.8, 9);
  });
});

describe('levels', () => {
  const chain = `${HEAD}
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
-F1:2 -K1:11-14 -K2:A1-A2 A:L-
-F1:2 -K2:11-12 -K3:A1-A2 A:L-
-F1:2 -K3:11-14 -H1:X1-X2 A:L-`;

  it('are as many as relays of which each is fed through a contact of the one before, by either leg', () => {
    expect(features(chain).levels).toBe(3);
    expect(features(chain.replace('-K2:11-12 -K3', '-B2:13-14 -K3')).levels).toBe(2);
    expect(features(chain.replace('-F1:2 -K1:11-14 -K2', '-F1:2 -B3:13-14 -K2')).levels).toBe(2);
  });

  it('are one for a relay that bears on no other, also where it holds itself, and none without relays', () => {
    const alone = `${HEAD}
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
-B1:13 -K1:11-14 -B1:14`;
    expect(features(alone)).toMatchObject({ levels: 1, memories: 1 });
    expect(features(`${HEAD}\nA:L+ -B1:13-14 -H1:X1-X2 A:L-`)).toMatchObject({ levels: 1, memories: 0 });
  });

  it('are counted whichever of the relays is listed first', () => {
    const listed = `
supply A 24 V DC
-K3 relay
-K2 relay
-K1 relay
-B1 field-contact make
A:L+ -B1:13-14 -K1:A1-A2 A:L-
A:L+ -K1:11-14 -K2:A1-A2 A:L-
A:L+ -K2:11-14 -K3:A1-A2 A:L-`;
    expect(features(listed).levels).toBe(3);
    expect(features(listed.replace('-K3 relay\n-K2 relay', '-K2 relay\n-K3 relay')).levels).toBe(3);
    // The last one bears on the first in turn.
    expect(features(`${listed}\n-K3:11 -B1:13\n-K3:14 -B1:14`).memories).toBe(0);
  });

  it('end in a ring, where each relay counts once', () => {
    const ring = `${HEAD}
A:L+ -F1:1-2 -K2:11-12 -K1:A1-A2 A:L-
-F1:2 -K1:11-12 -K2:A1-A2 A:L-`;
    expect(features(ring).levels).toBe(2);
  });
});

describe('contacts', () => {
  const two = `${HEAD}
A:L+ -F1:1-2 -B1:13-14 -B2:13-14 -K1:11-14 -H1:X1-X2 A:L-
-F1:2 -B3:13-14 -H2:X1-X2 A:L-
-F1:2 -K1:A1-A2 A:L-`;

  it('are counted in the networks of what is asked about, per network, without fuses', () => {
    expect(features(two, { lamps: ['-H1'] }).contacts).toBe(3);
    expect(features(two, { lamps: ['-H2'] }).contacts).toBe(1);
    expect(features(two, { lamps: ['-H1', '-H2'] }).contacts).toBe(2);
    expect(features(two, { relays: ['-K1'] }).contacts).toBe(0);
    expect(features(two).contacts).toBe(0);
  });

  it('of a pole are one for each leg that is wired', () => {
    const pole = `${HEAD}
A:L+ -F1:1-2 -B2:13-14 -K1:11-12 -H1:X1-X2 A:L-
-F1:2 -B1:13-14 -K1:A1-A2 A:L-`;
    expect(features(pole, { lamps: ['-H1'] }).contacts).toBe(2);
    const both = `${pole}\n-K1:14 -H2:X1-X2 A:L-`;
    expect(features(both, { lamps: ['-H1'] }).contacts).toBe(3);
    const unfed = `${HEAD}
A:L+ -F1:1-2 -B2:13-14 -H1:X1-X2 A:L-
-K1:14 -H1:X1
-K1:12 -H1:X1
-F1:2 -B1:13-14 -K1:A1-A2 A:L-`;
    expect(features(unfed, { lamps: ['-H1'] }).contacts).toBe(1);
  });

  it('of a lamp straight across its supply are none, and the lamp is in a network of its own', () => {
    const straight = `${HEAD}
-H3 lamp
A:L+ -F1:1-2 -B1:13-14 -B2:13-14 -H1:X1-X2 A:L-
-F1:2 -H2:X1-X2 A:L-
-F1:2 -H3:X1-X2 A:L-`;
    expect(features(straight, { lamps: ['-H1', '-H2', '-H3'] }).contacts).toBeCloseTo(2 / 3, 9);
  });
});

describe('ways beside one another', () => {
  const ways = (...lines: string[]) =>
    features([HEAD, 'A:L+ -F1:1-2 -B1:13-14 -H1:X1-X2 A:L-', ...lines].join('\n')).parallel;

  it('are the loops that contacts make, from pole to load', () => {
    expect(ways()).toBe(0);
    expect(ways('-F1:2 -B2:13-14 -H1:X1')).toBe(1);
    expect(ways('-F1:2 -B2:13-14 -H1:X1', '-F1:2 -B3:13-14 -H1:X1')).toBe(2);
    expect(ways('-F1:2 -B2:13-14 -B3:13-14 -H1:X1')).toBe(1);
    expect(ways('-F1:2 -B2:13-14 -H2:X1-X2 A:L-')).toBe(0);
  });

  it('lead to a load: contacts that lead to none are no ways', () => {
    expect(ways('-F1:2 -B2:13-14', '-F1:2 -B3:13-14', '-B3:14 -B2:14')).toBe(0);
  });

  it('are counted from whichever pole of a supply they come', () => {
    expect(ways('A:L+ -B2:13-14 -H1:X1')).toBe(1);
  });
});

describe('contacts elsewhere', () => {
  const circuit = (sheet: string, supply: string) => `
supply A 24 V DC
supply B 24 V DC
-F1 fuse
-F2 fuse
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
${sheet}
${supply === 'A' ? '-F1:2 -K1:11-14 -H1:X1-X2 A:L-' : 'B:L+ -F2:1-2 -K1:11-14 -H1:X1-X2 B:L-'}`;

  it('are those on another sheet than their coil, or on another supply', () => {
    expect(features(circuit('', 'A')).elsewhere).toBe(0);
    expect(features(circuit('sheet 2', 'A')).elsewhere).toBe(1);
    expect(features(circuit('', 'B')).elsewhere).toBe(1);
    expect(features(circuit('sheet 2', 'B')).elsewhere).toBe(1);
  });

  it('are told by the supply on whose path they are, wherever it begins, and by the sheet where it touches no supply', () => {
    const text = (path: string) => `
supply A 24 V DC
-K1 relay 2 poles
-B1 field-contact make
-B2 field-contact make
-H1 lamp
A:L+ -B1:13-14 -K1:A1-A2 A:L-
A:L+ -B2:13-14 -H1:X1-X2 A:L-
${path}`;
    expect(features(text('-H1:X1 -K1:14-11 A:L+')).elsewhere).toBe(0);
    expect(features(text('-B2:14 -K1:11-14 -H1:X1')).elsewhere).toBe(0);
    expect(features(text('sheet 2\n-B2:14 -K1:11-14 -H1:X1')).elsewhere).toBe(1);
  });

  it('are contacts: neither a coil on another sheet than the other of its relay, nor a wire to a terminal', () => {
    const latching = `
supply A 24 V DC
-S1 push-button make
-S2 push-button make
-K1 latching-relay
-H1 lamp
A:L+ -S1:13-14 -K1:A1-A2 A:L-
A:L+ -K1:11-14 -H1:X1-X2 A:L-
sheet 2
A:L+ -S2:13-14 -K1:B1-B2 A:L-
sheet 3
A:L+ -K1:11`;
    expect(features(latching).elsewhere).toBe(1);
  });
});

describe('memories and timers', () => {
  it('are relays that hold themselves or latch, and devices with a delay', () => {
    const text = `
supply A 24 V DC
-S1 push-button make
-S2 push-button make
-K1 latching-relay
-K2 off-delay 2 s
-K3 flasher 1 s on 1 s off
-K4 relay
A:L+ -S1:13-14 -K1:A1-A2 A:L-
A:L+ -S2:13-14 -K1:B1-B2 A:L-
A:L+ -K1:11-14 -K2:A1-A2 A:L-
A:L+ -K2:15-18 -K3:A1-A2 A:L-
A:L+ -K3:15-18 -K4:A1-A2 A:L-`;
    expect(features(text)).toMatchObject({ memories: 1, timers: 2, levels: 4 });
  });
});
