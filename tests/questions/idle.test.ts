/** Faults and losses that change nothing of what is asked are told to be so, and no other. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { type Question, questionKind } from '../../shared/question.ts';
import type { Act, Scenario } from '../../shared/scenario.ts';
import { blankAnswer, checkQuestion, explain, rightAnswer } from '../../src/questions/index.ts';
import { drawn } from '../support/drawn.ts';
import { markAnswer } from '../support/in-english.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';
import { freshQuestions } from './fresh.ts';

/** Flour line: a conveyor that holds itself, and a lamp that only follows its contact. */
const LINE = circuitOf(`
supply A 24 V DC
supply B 24 V DC
-F1 breaker
-S0 push-button break "Stop"
-S1 push-button make "Start"
-B1 field-contact make "Bin full"
-K1 relay 2 poles
-H1 lamp "Running"
-H2 lamp "Bin full"
-H3 lamp "Signals on"
A:L+ -F1:1-2 -S0:11-12 -S1:13-14 -K1:A1-A2 A:L-
-S0:12 -K1:11-14 -S1:14
-F1:2 -K1:21-24 -H1:X1-X2 A:L-
-F1:2 -B1:13-14 -H2:X1-X2 A:L-
B:L+ -H3:X1-X2 B:L-`);

const lamps = (scenario: Scenario, ...asked: string[]): Question => ({
  kind: 'lamp-states',
  circuit: LINE,
  scenario,
  family: 'fixed',
  asked,
});

/** What is said to change nothing, as it is told to whoever answered nothing, and to whoever had it right. */
function idle(question: Question): string[] {
  expect(checkQuestion(question)).toEqual([]);
  const [none, all] = [blankAnswer(question), rightAnswer(question)].map((answer) =>
    markAnswer(question, answer)
      .explanation.decides.filter(({ item }) => item === undefined)
      .map(({ text }) => text),
  );
  expect(all).toEqual(none);
  return none!;
}

describe('a fault', () => {
  it('that leaves a contact as it would stand anyway is told with that', () => {
    expect(idle(lamps(scenarioOf('press -S1; release -S1', '-S0:11-12 welded'), '-H1'))).toEqual([
      'That the contact -S0:11-12 is welded changes nothing of what was asked: it would be closed anyway.',
    ]);
    expect(idle(lamps(scenarioOf('press -S1', '-B1:13-14 dirty 5000 ohm'), '-H1', '-H2'))).toEqual([
      'That the contact -B1:13-14 is dirty (5000 ohm) changes nothing of what was asked: it would be open anyway.',
    ]);
  });

  it('on whose contact something would have moved is told without it where all the same nothing asked stands otherwise', () => {
    expect(idle(lamps(scenarioOf('press -S0; release -S0', '-S0:11-12 welded'), '-H1'))).toEqual([
      'That the contact -S0:11-12 is welded changes nothing of what was asked: without that the same would stand.',
    ]);
    expect(idle(lamps(scenarioOf('make -B1', '-K1:A1 broken'), '-H2'))).toEqual([
      'That the conductor at -K1:A1 is off changes nothing of what was asked: without that the same would stand.',
    ]);
  });

  it('of which there are several are told together', () => {
    expect(idle(lamps(scenarioOf('make -B1', '-K1:A1 broken; -H1:X2 broken'), '-H2'))).toEqual([
      'That the conductor at -K1:A1 is off and that the conductor at -H1:X2 is off change nothing of what was asked: without that the same would stand.',
    ]);
  });

  it('that is told of where something is explained by it is not', () => {
    const shorted = lamps(scenarioOf('press -S1; press -S0', '-K1:A1-A2 shorted'), '-H1');
    expect(idle(shorted)).toEqual([]);
    expect(markAnswer(shorted, blankAnswer(shorted)).explanation.decides[0]!.text).toContain(
      '-F1:1-2 is open',
    );
  });

  it('that decides is not', () => {
    expect(idle(lamps(scenarioOf('press -S1; press -S0', '-S0:11-12 welded'), '-H1'))).toEqual([]);
    expect(idle(lamps(scenarioOf('make -B1', '-B1:13 broken'), '-H1', '-H2'))).toEqual([]);
  });

  it('that would be one too many is not, where all of them together decide', () => {
    expect(idle(lamps(scenarioOf('make -B1', '-B1:13 broken; -H2:X2 broken'), '-H2'))).toEqual([]);
  });
});

describe('a loss', () => {
  it('after which all comes back is told by its acts, and one that a relay doesn’t survive is not', () => {
    const lost = 'open -F1; close -F1';
    expect(idle(lamps(scenarioOf(`make -B1; ${lost}`), '-H1', '-H2'))).toEqual([
      'Acts 2 (open -F1) and 3 (close -F1) change nothing of what was asked: without them the same would stand.',
    ]);
    expect(idle(lamps(scenarioOf(`press -S1; release -S1; ${lost}`), '-H1', '-H2'))).toEqual([]);
    expect(idle(lamps(scenarioOf('press -S1; release -S1; fail A; restore A'), '-H1'))).toEqual([]);
  });

  it('that lasts is told where nothing asked hangs on it, and is not where it is told of as off besides', () => {
    expect(idle(lamps(scenarioOf('fail B'), '-H1', '-H2'))).toEqual([
      'Act 1 (let supply B (24 V DC) fail) changes nothing of what was asked: without it the same would stand.',
    ]);
    expect(idle(lamps(scenarioOf('fail A'), '-H1', '-H2'))).toEqual([]);
  });

  it('that is seen at any of the moments asked about is not', () => {
    const asked = [1, 2, 3].map((after) => ({ after, item: '-H2' }));
    const scenario = scenarioOf('make -B1; open -F1; close -F1');
    const question: Question = { kind: 'sequence', circuit: LINE, scenario, family: 'fixed', asked };
    expect(idle(question)).toEqual([]);
    expect(idle({ ...question, asked: asked.filter(({ after }) => after !== 2) })).toHaveLength(1);
  });
});

/** A loss and what brings it back, by what is lost. */
const lostBy = (circuit: Circuit, act: Act): string | undefined => {
  if (act.kind === 'fail' || act.kind === 'restore') return act.supply;
  if (act.kind !== 'open' && act.kind !== 'close') return undefined;
  return circuit.devices.some(({ name }) => name === act.device) ? act.device : undefined;
};

describe('of fresh questions', () => {
  it.each(questionKind.options)('what is said to change nothing does so: %s', (kind) => {
    let faults = 0;
    for (const question of freshQuestions(kind, drawn(60))) {
      const about = `${question.family}, seed "${question.seed}"`;
      const right = rightAnswer(question);
      const tolerance = 'tolerance' in question ? question.tolerance : 0;
      for (const { said } of explain(question).decides) {
        if (said.says !== 'idleFaults' && said.says !== 'idleAnyway' && said.says !== 'idleActs') continue;
        const { scenario, circuit } = question;
        faults++;
        const told = 'all' in said ? said.all : 'fault' in said ? [said.fault] : [];
        const others = scenario.faults.filter(
          (fault) => !told.some((each) => JSON.stringify(each).includes(Object.values(fault)[1] as string)),
        );
        expect(others.length, about).toBe(scenario.faults.length - told.length);
        const lost = 'acts' in said ? said.acts.map(({ number }) => scenario.acts[number - 1]!) : [];
        expect(new Set(lost.map((act) => lostBy(circuit, act))).size, about).toBeLessThan(2);
        expect(told.length + lost.length, about).toBeGreaterThan(0);
        const acts = scenario.acts.map(
          (act): Act => (lost.includes(act) ? { kind: 'wait', seconds: 1e-9 } : act),
        );
        const answer = rightAnswer({ ...question, scenario: { ...scenario, faults: others, acts } });
        if ('volts' in right && 'volts' in answer && typeof right.volts === 'number')
          expect(Math.abs((answer.volts ?? 0) - right.volts), about).toBeLessThanOrEqual(tolerance);
        else if ('volts' in right && 'volts' in answer)
          expect(Math.abs(answer.volts ?? 0), about).toBeLessThanOrEqual(tolerance);
        else expect(answer, about).toEqual(right);
      }
    }
    if (kind === 'meter') expect(faults).toBeGreaterThan(0);
  });
});
