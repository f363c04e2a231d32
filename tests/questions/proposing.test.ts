/** What questions are made of a draft: properties that hold of every one, and that every sort of them comes about. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { QuestionOf } from '../../shared/question.ts';
import type { Draft } from '../../src/generator/index.ts';
import { randomOf } from '../../src/generator/random.ts';
import { checkQuestion, proposeQuestion, rightAnswer } from '../../src/questions/index.ts';
import { solve } from '../../src/solver/index.ts';
import { forEachTest } from '../support/for-each-test.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

const PANEL = circuitOf(`
supply A 24 V DC
supply B 12 V DC
-F1 breaker
-F2 breaker
-B1 field-contact make
-K1 relay 3 poles
-H1 lamp
-H2 lamp
-H3 lamp 12 V DC
-H4 lamp
-S1 push-button make
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
-F1:2 -K1:11-12 -H1:X1-X2 A:L-
-K1:11-14 -H2:X1-X2 A:L-
B:L+ -F2:1-2 -K1:21-24 -H3:X1-X2 B:L-
A:L+ -S1:13-14 -H4:X1-X2 A:L-`);

const draftOf = (acts: string, faults = '', circuit: Circuit = PANEL): Draft => ({
  family: 'test',
  circuit,
  scenario: scenarioOf(acts, faults),
  others: [],
  lamps: ['-H1', '-H2', '-H3', '-H4'],
  inputs: [],
  relays: ['-K1'],
  ends: 'steady',
});

function proposed<K extends 'meter' | 'wiring'>(kind: K, draft: Draft, count: number): QuestionOf<K>[] {
  return Array.from({ length: count }, (_, index) => {
    const question = proposeQuestion(draft, [kind], randomOf(`${kind} ${index}`));
    return question?.kind === kind ? [question as QuestionOf<K>] : [];
  }).flat();
}

const WIRED = new Set(
  PANEL.paths.flatMap(({ steps }) =>
    steps.flatMap(({ device, enter, leave }) => [
      `${device}:${enter}`,
      ...(leave ? [`${device}:${leave}`] : []),
    ]),
  ),
);

describe('what is measured between', () => {
  const readings = (draft: Draft) =>
    proposed('meter', draft, 100).map((question) => {
      expect(checkQuestion(question)).toEqual([]);
      const right = rightAnswer(question);
      return { question, volts: right.kind === 'meter' ? right.volts! : Number.NaN };
    });
  const drawn = forEachTest(() => readings(draftOf('make -B1')));

  it('are points that wires come to, read within a twentieth of the largest supply, without doubt and not below nothing', () => {
    const found = drawn();
    expect(found.length).toBeGreaterThan(60);
    for (const { question, volts } of found) {
      for (const point of question.points) expect(WIRED).toContain(point);
      expect(question.points[0]).not.toBe(question.points[1]);
      expect(question.tolerance).toBe(1.2);
      if (volts === null) continue;
      expect(volts === 0 || Math.abs(volts) < 0.24 || volts > 2.4, `${question.points} ${volts}`).toBe(true);
      expect(volts).toBeGreaterThanOrEqual(0);
    }
  });

  it('are contacts that are open and closed, loads, points against their own return and against another supply’s', () => {
    const found = drawn();
    const read = (one: string, other: string) => {
      const across = found.filter(
        ({ question: { points } }) => points.includes(one) && points.includes(other),
      );
      return [...new Set(across.map(({ volts }) => volts))];
    };
    // Open: the whole voltage. Closed: none.
    expect(read('-K1:11', '-K1:12')).toEqual([24]);
    expect(read('-B1:13', '-B1:14')).toContain(0);
    expect(read('-H2:X1', '-H2:X2')).toContain(24);
    expect(read('-H3:X1', '-H3:X2')).toContain(12);
    const floating = found.filter(({ volts }) => volts === null);
    expect(floating.length).toBeGreaterThan(0);
    const supplyOf = (point: string): string => (/^B:|^-(F2|H3|K1:2)/.test(point) ? 'B' : 'A');
    for (const { question } of floating)
      expect(new Set(question.points.map(supplyOf)).size, `${question.points}`).toBe(2);
    const againstReturn = found.filter(
      ({ question: { points }, volts }) =>
        points.includes('A:L-') && points.includes('-F1:2') && volts === 24,
    );
    expect(againstReturn.length).toBeGreaterThan(0);
  });

  it('are dirty contacts of relays before a lamp that is lit, where nothing else is wrong', () => {
    const found = drawn();
    const dirty = found.filter(({ question }) => question.scenario.faults.length > 0);
    expect(dirty.length).toBeGreaterThan(2);
    for (const { question, volts } of dirty) {
      const [fault] = question.scenario.faults;
      expect(fault).toMatchObject({ kind: 'dirty' });
      const contact = fault?.kind === 'dirty' ? [fault.from, fault.to] : [];
      // -H1 is dark: its leg isn't on the path of a lamp that is lit. Fuses and field contacts are no relays.
      expect([
        ['-K1:11', '-K1:14'],
        ['-K1:21', '-K1:24'],
      ]).toContainEqual(contact);
      expect([...question.points].sort()).toEqual([...contact].sort());
      // Nearly all of the voltage, since the lamp behind it has next to nothing.
      expect(volts).toBeGreaterThan(11);
    }
    const faulty = proposed('meter', draftOf('make -B1', '-K1:21-24 dirty 1000000 ohm'), 60);
    for (const { scenario } of faulty)
      expect(scenario.faults).toEqual(draftOf('', '-K1:21-24 dirty 1000000 ohm').scenario.faults);
  });
});

describe('what is not measured between', () => {
  it('are windings of a motor, and terminals that no wire comes to', () => {
    const motor = circuitOf(`
supply P 400 V 3AC
-Q1 contactor 230 V AC
-M1 motor 400 V 6 terminals
-H1 lamp 400 V AC
P:L1 -Q1:1-2 -M1:U1
P:L2 -Q1:3-4 -M1:V1
P:L3 -Q1:5-6 -M1:W1
-M1:U2 -M1:V2
-M1:V2 -M1:W2
P:L1 -H1:X1`);
    const wired = new Set(
      motor.paths.flatMap(({ steps }) => steps.flatMap(({ enter, leave }) => [enter, leave])),
    );
    const found = proposed('meter', { ...draftOf('', '', motor), lamps: [], relays: [] }, 80);
    expect(found.length).toBeGreaterThan(40);
    for (const { points } of found) {
      for (const point of points) if (point.startsWith('-')) expect(wired).toContain(point.split(':')[1]);
      expect(points.map((point) => /^-M1:([UVW])/.exec(point)?.[1]).filter(Boolean).length).toBeLessThan(2);
    }
  });

  it('is anything that hangs free on the one supply there is; nor is a contact looked for where none is', () => {
    const one = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-B2 field-contact make
-H1 lamp
-H2 lamp
A:L+ -B1:13-14 -B2:13-14 -H1:X1-X2 A:L-
A:L+ -H2:X1-X2 A:L-`);
    const draft = { ...draftOf('', '', one), lamps: ['-H1', '-H2'], relays: [] };
    const found = proposed('meter', draft, 80);
    expect(found.length).toBeGreaterThan(20);
    for (const question of found) {
      const right = rightAnswer(question);
      if (question.points.includes('-B1:14') || question.points.includes('-B2:13')) continue;
      expect(right.kind === 'meter' && right.volts, `${question.points}`).not.toBeNull();
    }
    const returns = found.filter(({ points }) => points.includes('A:L-'));
    expect(returns.every((question) => (rightAnswer(question) as { volts: unknown }).volts !== null)).toBe(
      true,
    );
    const plain = circuitOf('supply A 24 V DC\n-H1 lamp\nA:L+ -H1:X1-X2 A:L-');
    for (const { points } of proposed('meter', { ...draft, circuit: plain, lamps: ['-H1'] }, 40))
      expect(points).toHaveLength(2);
  });
});

describe('a contact to be wired', () => {
  const draft = draftOf('make -B1; break -B1');
  const drawn = forEachTest(() => proposed('wiring', draft, 30));
  const states = (
    circuit: typeof PANEL,
    acts: QuestionOf<'wiring'>['wanted'][number]['acts'],
    load: string,
  ) => solve(circuit, { start: 'live', faults: [], acts: [...acts] }).solution.lamps[load];

  it('is a relay’s, taken out with both its wires; with the right pair the drawing does what it did', () => {
    const found = drawn();
    expect(found.length).toBeGreaterThan(15);
    const taken = new Set<string>();
    for (const question of found) {
      expect(checkQuestion(question)).toEqual([]);
      const right = rightAnswer(question);
      const [first, second] = question.choices[right.kind === 'wiring' ? right.choice! : 0]!;
      taken.add([first, second].sort().join(' '));
      const [from, to] = question.ends;
      const wires = [
        [from, first],
        [second, to],
      ].map((pair) => ({
        sheet: 1,
        steps: pair.map((terminal) => ({ device: terminal.split(':')[0]!, enter: terminal.split(':')[1]! })),
      }));
      const whole = { ...question.circuit, paths: [...question.circuit.paths, ...wires] } as typeof PANEL;
      for (const lamp of draft.lamps)
        for (const { acts } of question.wanted)
          expect(states(whole, acts, lamp)).toBe(states(PANEL, acts, lamp));
    }
    // Not the one with which a path begins: no wire comes to it there.
    expect([...taken].sort()).toEqual(['-K1:11 -K1:12', '-K1:21 -K1:24']);
  });

  it('is told by both states of the lamp behind it, each after the acts that lead to it', () => {
    const found = drawn();
    for (const { wanted } of found) {
      expect(wanted.map(({ acts }) => acts.length)).toEqual([0, 1, 2]);
      expect(new Set(wanted.map(({ load }) => load)).size).toBe(1);
      for (const { acts, load, state } of wanted) expect(states(PANEL, acts, load)).toBe(state);
      expect(wanted[0]!.state).not.toBe(wanted[1]!.state);
      expect(wanted[2]!.state).toBe(wanted[0]!.state);
    }
  });

  it('has three to five choices, no two of them the same pair, the nearest mistakes among them', () => {
    const found = drawn();
    const places = new Set<number>();
    for (const question of found) {
      const pairs = question.choices.map((pair) => [...pair].sort().join(' '));
      expect(new Set(pairs).size).toBe(pairs.length);
      expect(pairs.length).toBeGreaterThanOrEqual(3);
      expect(pairs.length).toBeLessThanOrEqual(5);
      const right = rightAnswer(question);
      const at = right.kind === 'wiring' ? right.choice! : -1;
      places.add(at);
      // The other leg with the common, and the two legs with each other, of the very pole.
      const pole = pairs[at]![4]!;
      const own = pairs.filter(
        (pair) => pair.startsWith(`-K1:${pole}`) && pair.split(' ')[1]!.startsWith(`-K1:${pole}`),
      );
      expect(own.length).toBe(3);
    }
    expect(places.size).toBeGreaterThan(2);
  });

  it('is one before an input as well as before a lamp, and never a main contact', () => {
    const feeder = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-Q1 contactor 2 main make 13-14 make 23-24 make 33-34
-K1 relay
-H1 lamp
-A1 inputs 2 24V-3
A:L+ -B1:13-14 -Q1:A1-A2 A:L-
-B1:14 -K1:A1-A2 A:L-
-B1:13 -Q1:1-2 -H1:X1-X2 A:L-
-B1:13 -K1:11-14 -A1:I1-COM A:L-`);
    const questions = proposed(
      'wiring',
      {
        ...draftOf('make -B1', '', feeder),
        lamps: ['-H1'],
        inputs: ['-A1:I1'],
        relays: ['-Q1', '-K1'],
      },
      20,
    );
    expect(new Set(questions.map(({ wanted }) => wanted[0]!.load))).toEqual(new Set(['-A1:I1']));
    for (const { wanted } of questions) expect(wanted.map(({ state }) => state)).toEqual(['0', '1']);
  });

  it('is none where its lamp never changes, or an order of operation decides', () => {
    expect(proposed('wiring', draftOf(''), 10)).toEqual([]);
    expect(proposed('wiring', { ...draft, lamps: [] }, 10)).toEqual([]);
  });
});
