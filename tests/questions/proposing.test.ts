/** What questions are made of a draft: properties that hold of every one, and that every sort of them comes about. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { QuestionOf } from '../../shared/question.ts';
import type { Draft } from '../../src/generator/index.ts';
import { randomOf } from '../../src/generator/random.ts';
import { checkQuestion, proposeQuestion, rightAnswer } from '../../src/questions/index.ts';
import { solve } from '../../src/solver/index.ts';
import { forEachTest } from '../support/for-each-test.ts';
import { askQuestion } from '../support/in-english.ts';
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

const LAMPS = `
supply A 24 V DC
supply B 12 V DC
-F1 breaker
-F2 breaker
-B1 field-contact make
-K1 relay 4 poles
-H1 lamp
-H2 lamp
-H3 lamp 12 V DC
-H4 lamp
-H5 lamp
-S1 push-button make
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
-F1:2 -K1:11-12 -H1:X1-X2 A:L-
-K1:11-14 -H2:X1-X2 A:L-
B:L+ -F2:1-2 -K1:21-24 -H3:X1-X2 B:L-
-F1:2 -K1:31-34 -H5:X1-X2 A:L-
A:L+ -S1:13-14 -H4:X1-X2 A:L-`;

describe('what is measured between', () => {
  const readings = (draft: Draft, count = 150) =>
    proposed('meter', draft, count).map((question) => {
      expect(checkQuestion(question)).toEqual([]);
      const right = rightAnswer(question);
      return { question, volts: right.kind === 'meter' ? right.volts! : Number.NaN };
    });
  const drawn = forEachTest(() => readings(draftOf('make -B1', '', circuitOf(LAMPS))));

  it('are points that wires come to, on two conductors, read within a twentieth of the largest supply and without doubt', () => {
    const found = drawn();
    expect(found.length).toBeGreaterThan(100);
    for (const { question, volts } of found) {
      const wired = new Set(
        question.circuit.paths.flatMap(({ steps }) =>
          steps.flatMap(({ device, enter, leave }) => [
            `${device}:${enter}`,
            ...(leave ? [`${device}:${leave}`] : []),
          ]),
        ),
      );
      for (const point of question.points) expect(wired).toContain(point);
      expect(question.points[0]).not.toBe(question.points[1]);
      expect(question.tolerance).toBe(1.2);
      if (volts === null) continue;
      expect(Math.abs(volts) < 0.24 || Math.abs(volts) > 2.4, `${question.points} ${volts}`).toBe(true);
    }
  });

  it('read nothing, the whole voltage of either supply, a part of it, with either sign: none of them in a third of all', () => {
    const counts = new Map<number, number>();
    for (const { volts } of drawn()) {
      const shown = Math.round(volts ?? 0);
      counts.set(shown, (counts.get(shown) ?? 0) + 1);
    }
    for (const shown of [0, 24, -24]) expect(counts.get(shown), `${shown} V`).toBeGreaterThan(3);
    for (const part of [1, -1]) {
      const between = [...counts].filter(([shown]) => part * shown > 2 && part * shown < 22);
      expect(between.length).toBeGreaterThan(2);
    }
    expect(Math.max(...counts.values())).toBeLessThan(drawn().length / 3);
  });

  it('are mostly at contacts of relays that take a part of the voltage of a lamp that is fed; what the lamps keep is told', () => {
    const dirty = drawn().filter(({ question }) => question.scenario.faults.length > 0);
    expect(dirty.length).toBeGreaterThan(drawn().length / 2);
    for (const { question } of dirty) {
      const { faults } = question.scenario;
      expect(faults.length).toBeLessThanOrEqual(2);
      for (const fault of faults) {
        const ends = fault.kind === 'dirty' ? [fault.from, fault.to] : [];
        // -H1 is dark: its leg isn't on the path of a lamp that is lit. Fuses and field contacts are no relays.
        expect([
          ['-K1:11', '-K1:14'],
          ['-K1:21', '-K1:24'],
          ['-K1:31', '-K1:34'],
        ]).toContainEqual([...ends].sort());
      }
      const { situation } = askQuestion(question);
      const told = situation.flatMap((line) => /between (\S+) and (\S+) shows ([\d.]+) V/.exec(line) ?? []);
      expect(told.length / 4).toBe(faults.length);
      // What is told isn't asked.
      for (let at = 0; at < told.length; at += 4)
        expect([...question.points].sort()).not.toEqual([told[at + 1], told[at + 2]].sort());
    }
  });

  // Ohm's law in a chain of two resistances: the lamp has (24 V)^2 over its watts; what it keeps is told to a hundredth of a volt, and the
  // other end of the contact before it has all of the supply.
  it('read at a dirty contact what the lamp behind it keeps, against others what these have less or more', () => {
    let compared = 0;
    for (const { question, volts } of drawn()) {
      const told = new Map(
        askQuestion(question).situation.flatMap((line) => {
          const [, lamp, kept] = /between (-H\d):X1 .*shows ([\d.]+) V/.exec(line) ?? [];
          return lamp ? [[lamp, Number(kept)] as const] : [];
        }),
      );
      const at: Record<string, number | undefined> = { '-B1:13': 24, '-B1:14': 24, '-K1:A1': 24 };
      for (const { steps } of question.circuit.paths) {
        const lamp = steps.find(({ device }) => device === '-H2' || device === '-H5');
        const contact = steps.find(({ device }) => device === '-K1');
        if (!lamp || !contact) continue;
        at[`-K1:${contact.enter}`] = 24;
        at[`-K1:${contact.leave}`] = told.get(lamp.device);
        at[`${lamp.device}:X1`] = told.get(lamp.device);
      }
      const [first, second] = question.points.map((point) => at[point]);
      if (first === undefined || second === undefined) continue;
      expect(volts).toBeCloseTo(first - second, 1);
      compared++;
    }
    expect(compared).toBeGreaterThan(5);
  });

  it('leave a fault that is there already as it is', () => {
    const faulty = draftOf('make -B1', '-K1:21-24 dirty 1000000 ohm');
    for (const { scenario } of proposed('meter', faulty, 60))
      expect(scenario.faults).toEqual(faulty.scenario.faults);
  });
});

describe('what is not measured between', () => {
  it('are terminals that no wire comes to, and drawings on which nothing but the whole voltage can be read', () => {
    const plain = circuitOf('supply A 24 V DC\n-H1 lamp\nA:L+ -H1:X1-X2 A:L-');
    expect(proposed('meter', { ...draftOf('', '', plain), lamps: ['-H1'], relays: [] }, 40)).toEqual([]);
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
    for (const { points } of proposed('meter', { ...draftOf('', '', motor), lamps: [], relays: [] }, 80))
      for (const point of points) if (point.startsWith('-')) expect(wired).toContain(point.split(':')[1]);
  });

  it('is one conductor with itself, or a reading between what is told', () => {
    for (const { points, circuit } of proposed('meter', draftOf('make -B1', '', circuitOf(LAMPS)), 60)) {
      const joined = circuit.paths.some(({ steps }) =>
        steps.some((step, at) => {
          const before = steps[at - 1];
          if (!before) return false;
          const wire = [`${before.device}:${before.leave ?? before.enter}`, `${step.device}:${step.enter}`];
          return points.every((point) => wire.includes(point));
        }),
      );
      expect(joined, `${points}`).toBe(false);
    }
  });
});

const TWO_RELAYS = circuitOf(`
supply A 24 V DC
-F1 breaker
-B1 field-contact make
-B2 field-contact break
-K1 relay 2 poles
-K2 relay 1 pole
-H1 lamp
-H2 lamp
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
-F1:2 -B2:11-12 -K2:A1-A2 A:L-
-F1:2 -K1:11-12 -H1:X1-X2 A:L-
-F1:2 -K2:11-14 -H2:X1-X2 A:L-`);

describe('a contact to be wired', () => {
  const draft = {
    ...draftOf('make -B1; break -B1; break -B2; make -B2', '', TWO_RELAYS),
    lamps: ['-H1', '-H2'],
    relays: ['-K1', '-K2'],
  };
  const drawn = forEachTest(() => proposed('wiring', draft, 40));
  const states = (circuit: Circuit, acts: QuestionOf<'wiring'>['wanted'][number]['acts'], load: string) =>
    solve(circuit, { start: 'live', faults: [], acts: [...acts] }).solution.lamps[load];

  it('is a relay’s, taken out with both its wires; with the right pair the lamp does what it did', () => {
    const found = drawn();
    expect(found.length).toBeGreaterThan(20);
    const taken = new Set<string>();
    for (const question of found) {
      expect(checkQuestion(question)).toEqual([]);
      const right = rightAnswer(question);
      const [first, second] = question.choices[right.kind === 'wiring' ? right.choice! : 0]!;
      taken.add(`${first.slice(0, -1)}?-${first.at(-1)}${second.at(-1)}`.replace(/:\d\?/, ''));
      const [from, to] = question.ends;
      const wires = [
        [from, first],
        [second, to],
      ].map((pair) => ({
        sheet: 1,
        steps: pair.map((terminal) => ({ device: terminal.split(':')[0]!, enter: terminal.split(':')[1]! })),
      }));
      const whole = { ...question.circuit, paths: [...question.circuit.paths, ...wires] } as Circuit;
      for (const { acts, load } of question.wanted)
        expect(states(whole, acts, load)).toBe(states(TWO_RELAYS, acts, load));
    }
    // Of -K1 the break, of -K2, which is energised at rest, the make: on whichever pole.
    expect([...taken].sort()).toEqual(['-K1-12', '-K2-14']);
  });

  it('is told by both states of the lamp behind it, each after the acts that lead to it', () => {
    for (const { wanted } of drawn()) {
      expect(new Set(wanted.map(({ load }) => load)).size).toBe(1);
      expect(new Set(wanted.map(({ state }) => state)).size).toBe(2);
      for (const { acts, load, state } of wanted) expect(states(TWO_RELAYS, acts, load)).toBe(state);
      for (const [at, { state }] of wanted.entries())
        if (at > 0) expect(state).not.toBe(wanted[at - 1]!.state);
    }
    // What is so at the start isn't always told.
    expect(new Set(drawn().map(({ wanted }) => wanted[0]!.acts.length === 0)).size).toBe(2);
  });

  it('is offered with both contacts of a pole of each relay, in any order, no two of them the same', () => {
    const places = new Set<number>();
    for (const question of drawn()) {
      const pairs = question.choices.map((pair) => [...pair].sort().join(' '));
      expect(new Set(pairs).size).toBe(4);
      expect(pairs.filter((pair) => pair.startsWith('-K1'))).toHaveLength(2);
      const right = rightAnswer(question);
      places.add(right.kind === 'wiring' ? right.choice! : -1);
    }
    expect([...places].sort()).toEqual([0, 1, 2, 3]);
  });

  it('is one before an input as well as before a lamp, and never a main contact', () => {
    const feeder = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-Q1 contactor 2 main make 13-14 make 23-24 break 31-32
-K1 relay
-H1 lamp
-A1 inputs 2 24V-3
A:L+ -B1:13-14 -Q1:A1-A2 A:L-
-B1:14 -K1:A1-A2 A:L-
-B1:13 -Q1:1-2 -H1:X1-X2 A:L-
-B1:13 -K1:11-14 -A1:I1-COM A:L-`);
    const ask = (acts: string) =>
      proposed(
        'wiring',
        { ...draftOf(acts, '', feeder), lamps: ['-H1'], inputs: ['-A1:I1'], relays: ['-Q1', '-K1'] },
        20,
      );
    // The contactor is in whenever the relay is: its make contact would do as well, so there is nothing to choose.
    expect(ask('make -B1')).toEqual([]);
    const own = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-B2 field-contact make
-Q1 contactor 2 main make 13-14 make 23-24 break 31-32
-K1 relay
-H1 lamp
-A1 inputs 2 24V-3
A:L+ -B2:13-14 -Q1:A1-A2 A:L-
A:L+ -B1:13-14 -K1:A1-A2 A:L-
-B1:13 -Q1:1-2 -H1:X1-X2 A:L-
-B1:13 -K1:11-14 -A1:I1-COM A:L-`);
    const questions = proposed(
      'wiring',
      {
        ...draftOf('make -B1', '', own),
        lamps: ['-H1'],
        inputs: ['-A1:I1'],
        relays: ['-Q1', '-K1'],
      },
      20,
    );
    expect(questions.length).toBeGreaterThan(5);
    expect(new Set(questions.map(({ wanted }) => wanted[0]!.load))).toEqual(new Set(['-A1:I1']));
    for (const { wanted } of questions) expect(wanted.map(({ state }) => state)).toEqual(['0', '1']);
  });

  it('is none where its lamp never changes, one relay is all there is, or what is wanted happens anyway', () => {
    expect(proposed('wiring', { ...draft, scenario: scenarioOf('') }, 10)).toEqual([]);
    expect(proposed('wiring', { ...draft, lamps: [] }, 10)).toEqual([]);
    expect(proposed('wiring', draftOf('make -B1; break -B1'), 10)).toEqual([]);
  });
});
