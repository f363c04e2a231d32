/** What predictions are: left out, without an answer, and the same however they are come to. */

import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { MISCONCEPTIONS, predict, predictAll, predictor, viewOf } from '../../src/misconceptions/index.ts';
import { tellIdea } from '../../src/questions/index.ts';
import { machineOf, planOf, play, readState } from '../../src/solver/index.ts';
import { english } from '../../src/words/en/core.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';
import { THREE_CIRCUITS } from './circuits/all.ts';

const byId = (id: string) => {
  const found = MISCONCEPTIONS.find((misconception) => misconception.id === id);
  if (!found) throw new Error(`no misconception ${id}`);
  return found;
};

const plain = circuitOf(`
supply A 24 V AC
-F1 breaker
-H1 lamp
A:L -F1:1-2 -H1:X1-X2 A:N`);
const statusPair = circuitOf(`
supply A 24 V AC
-F1 breaker
-B1 field-contact make
-K1 relay
-H1 lamp
-H2 lamp
A:L -F1:1-2 -B1:13-14 -K1:A1-A2 A:N
-F1:2 -K1:11-12 -H1:X1-X2 A:N
-K1:11-14 -H2:X1-X2 A:N`);
const sealed = circuitOf(`
supply A 24 V AC
-S0 push-button break 21-22
-S1 push-button make
-K1 relay 2 poles
-H1 lamp
A:L -S0:21-22 -S1:13-14 -K1:A1-A2 A:N
-S0:22 -K1:11-14 -S1:14
A:L -K1:21-24 -H1:X1-X2 A:N`);
const jog = circuitOf(`
supply A 24 V AC
-S1 push-button make
-K1 relay
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N`);
const chain = circuitOf(`
supply A 24 V AC
-B1 field-contact make
-K1 relay
-K2 relay
-H1 lamp
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K2:A1-A2 A:N
-K1:12 -H2:X1-X2 A:N
A:L -K2:11-14 -H1:X1-X2 A:N`);
const interlock = circuitOf(`
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp
-H2 lamp
A:L -S1:13-14 -K2:11-12 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:11-12 -K2:A1-A2 A:N
A:L -K1:21-24 -H1:X1-X2 A:N
A:L -K2:21-24 -H2:X1-X2 A:N`);
const twoSupplies = circuitOf(`
supply A 24 V AC
supply B 24 V DC
-Q1 isolator
-Q2 isolator
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
-A1 inputs 2 24V-3
A:L -Q1:1-2 -K1:11-12 -H1:X1-X2 A:N
A:L -B1:13-14 -K1:A1-A2 A:N
B:L+ -Q2:1-2 -K1:21-22 -A1:I1-COM B:L-`);

const bothEarthed = circuitOf(`
supply A 24 V AC earthed
supply B 24 V DC earthed
-H1 lamp
A:L -H1:X1-X2 A:N`);

const flashing = circuitOf(`
supply A 24 V DC
-K1 flasher 1 s on 1 s off
A:L+ -K1:A1-A2 A:L-`);
const fieldLamp = circuitOf(`
supply A 24 V DC
-B1 limit-switch break
-H1 lamp
A:L+ -B1:11-12 -H1:X1-X2 A:L-`);
const weldedReturn = circuitOf(`
supply A 24 V AC
-K1 contactor 0 main make
-H1 lamp
A:L -H1:X1-X2 -K1:13-14 A:N`);

/** Where an idea is left out: neither the circuit nor what is done has anything that it is about. */
const LEFT_OUT: readonly (readonly [string, Circuit, Scenario])[] = [
  ['nothing-moves', plain, scenarioOf()],
  ['nothing-moves', jog, scenarioOf('press -S1', '-K1 stuck')],
  ['make-for-break', plain, scenarioOf()],
  ['break-never-opens', plain, scenarioOf()],
  ['both-legs-closed', plain, scenarioOf()],
  ['open-contact-followed', plain, scenarioOf()],
  ['blocking-contact-overlooked', jog, scenarioOf('press -S1')],
  ['blocking-contact-overlooked', sealed, scenarioOf('press -S1')],
  ['blocking-contact-overlooked', interlock, scenarioOf('press -S1', '-K1:11-12 welded; -K2:11-12 welded')],
  ['second-relay-as-drawn', interlock, scenarioOf('press -S1')],
  ['second-relay-as-drawn', jog, scenarioOf('press -S1')],
  ['second-relay-as-drawn', sealed, scenarioOf('press -S1')],
  ['second-relay-as-drawn', chain, scenarioOf('make -B1', '-K2 stuck')],
  ['contacts-beside-coil', statusPair, scenarioOf('make -B1')],
  ['contacts-beside-coil', jog, scenarioOf('press -S1')],
  ['first-pole-only', statusPair, scenarioOf('make -B1')],
  ['seal-forgotten', jog, scenarioOf('press -S1; release -S1')],
  ['seal-where-none', sealed, scenarioOf('press -S1; release -S1')],
  ['remembers-over-loss', sealed, scenarioOf('press -S1; release -S1; fail A')],
  ['remembers-over-loss', sealed, scenarioOf('press -S1; restore A')],
  ['remembers-over-loss', twoSupplies, scenarioOf('open -Q1; close -Q2')],
  ['timers-instant', jog, scenarioOf('press -S1')],
  ['delays-exchanged', jog, scenarioOf('press -S1')],
  ['delay-adds-up', jog, scenarioOf('press -S1')],
  ['delay-adds-up', flashing, scenarioOf()],
  ['latch-drops-out', jog, scenarioOf('press -S1')],
  ['one-supply', plain, scenarioOf('open -F1')],
  ['line-side-dead', plain, scenarioOf()],
  ['line-side-dead', twoSupplies, scenarioOf('fail A')],
  ['common-reference', plain, scenarioOf()],
  ['common-reference', bothEarthed, scenarioOf()],
  ['return-ignored', plain, scenarioOf()],
  ['return-ignored', weldedReturn, scenarioOf('', '-K1:13-14 welded')],
  ['input-inverted', twoSupplies, scenarioOf()],
  ['input-inverted', fieldLamp, scenarioOf()],
  ['normal-is-running', jog, scenarioOf('press -S1')],
];

describe('a misconception', () => {
  it.each(LEFT_OUT)('%s is left out where it can make no difference', (id, on, does) => {
    expect(predict(byId(id), on, does)).toBeUndefined();
    expect(viewOf(byId(id), on, does)).toBeUndefined();
  });

  it('is left out somewhere, every one of them', () => {
    expect([...new Set(LEFT_OUT.map(([id]) => id))].sort()).toEqual(
      MISCONCEPTIONS.map(({ id }) => id).sort(),
    );
  });

  it('has words for the learner', () => {
    for (const { id } of MISCONCEPTIONS) {
      const { idea, advice } = tellIdea(english, id);
      expect(id).toMatch(/^[a-z]+(-[a-z]+)+$/);
      expect(idea).toMatch(/^You .*\.$/);
      expect(advice).toMatch(/\.$/);
    }
  });

  it('that makes the circuit switch for ever predicts nothing', () => {
    // With its seal read as a break, -K1 would break its own coil.
    const selfHolding = circuitOf(`
supply A 24 V AC
-B1 field-contact make
-K1 relay
-H1 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K1:A1
A:L -H1:X1-X2 A:N`);
    expect(viewOf(byId('make-for-break'), selfHolding, scenarioOf())).toBeDefined();
    expect(predict(byId('make-for-break'), selfHolding, scenarioOf())).toBeUndefined();
  });

  const foretold = (id: string, on: Circuit, scenario: Scenario) =>
    predictor(byId(id), on, machineOf(planOf(on, scenario.faults)))(scenario);

  /** The lamp's end goes to one pole or the other: with both legs closed, L and N are joined. */
  const fused = circuitOf(`
supply A 24 V AC
-F1 fuse
-K1 relay
-H1 lamp
A:L -F1:1-2 -K1:11-14 -H1:X1-X2 A:N
-K1:12 A:N`);
  const unprotected = circuitOf(`
supply A 24 V AC
-K1 relay
-H1 lamp
A:L -K1:14-11 -H1:X1-X2 A:N
-K1:12 A:N`);

  it.each([
    ['a fuse opens', fused],
    ['nothing opens', unprotected],
  ])('that makes a short circuit predicts nothing: %s', (_, on) => {
    expect(viewOf(byId('both-legs-closed'), on, scenarioOf())).toBeDefined();
    expect(foretold('both-legs-closed', on, scenarioOf())).toEqual({ kind: 'no-answer' });
    expect(predict(byId('both-legs-closed'), on, scenarioOf())).toBeUndefined();
  });

  it('that makes a short circuit predicts what is left where something is faulty anyway', () => {
    const told = foretold('both-legs-closed', fused, scenarioOf('', '-H1:X2 broken'));
    expect(told.kind === 'prediction' && told.prediction.state.tripped).toHaveLength(1);
  });

  it('that sets a flasher going predicts nothing', () => {
    const on = circuitOf(`
# Nursery: the alarm flasher runs behind a contact that is open
supply A 24 V AC
-B1 field-contact make
-K1 relay
-K2 flasher 1 s on 1 s off
-H1 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K2:A1-A2 A:N
A:L -K2:15-18 -H1:X1-X2 A:N`);
    expect(foretold('open-contact-followed', on, scenarioOf())).toEqual({ kind: 'no-answer' });
  });

  it('that adds up a delay goes on doing so over many rounds of a flasher', () => {
    const on = circuitOf(`
# Flour line: a flasher interrupts a timer
supply A 24 V AC
-K1 flasher 1 s on 1 s off
-K2 on-delay 19.5 s
A:L -K1:A1-A2 A:N
A:L -K1:15-18 -K2:A1-A2 A:N`);
    // A second of every two: half a second is left after 38 s. The next count begins at 40 s, with the next second on.
    const operated = (seconds: number): boolean | undefined => {
      const { plan } = viewOf(byId('delay-adds-up'), on, scenarioOf())!;
      const machine = machineOf(plan);
      const { state } = play(machine, scenarioOf(`wait ${seconds} s`));
      return readState(machine, state).coils['-K2']?.operated;
    };
    expect([38.4, 38.6, 39.2, 78.4, 78.6].map(operated)).toEqual([false, true, false, false, true]);
    const machine = machineOf(planOf(on));
    const { state } = play(machine, scenarioOf('wait 78.6 s'));
    expect(readState(machine, state).coils['-K2']?.operated).toBe(false);
  });

  it('is ready for many scenarios, in some of which it makes no difference', () => {
    const ready = predictor(byId('one-supply'), twoSupplies, machineOf(planOf(twoSupplies)));
    expect(ready(scenarioOf('make -B1'))).toEqual({ kind: 'no-difference' });
    const inputs = (does: string): unknown => {
      const told = ready(scenarioOf(does));
      return told.kind === 'prediction' && readState(told.prediction.machine, told.prediction.state).inputs;
    };
    expect(inputs('open -Q1')).toEqual({ '-A1:I1': '0', '-A1:I2': '0' });
    expect(inputs('open -Q1; close -Q1')).toEqual({ '-A1:I1': '1', '-A1:I2': '0' });
    expect(inputs('fail A')).toEqual({ '-A1:I1': '0', '-A1:I2': '0' });
  });

  it('takes over the faults of the scenario', () => {
    const burnt = scenarioOf('make -B1', '-K1:A1-A2 open');
    const { machine, state } = predict(byId('make-for-break'), statusPair, burnt)!;
    const { lamps, coils } = readState(machine, state);
    expect(lamps).toEqual({ '-H1': 'dark', '-H2': 'lit' });
    expect(coils['-K1']?.operated).toBe(false);
    // With the lamp's conductor off nothing can light it; the other one is lit with the contacts exchanged.
    const loose = predict(byId('make-for-break'), statusPair, scenarioOf('', '-H1:X2 broken'))!;
    expect(readState(loose.machine, loose.state).lamps).toEqual({ '-H1': 'dark', '-H2': 'lit' });
  });

  it('predicts the same with and without the machine at hand', () => {
    const scenario = scenarioOf('make -B1');
    const alone = predictAll(chain, scenario);
    const shared = predictAll(chain, scenario, machineOf(planOf(chain)));
    expect(shared.map(({ misconception, state }) => [misconception.id, [...state.at]])).toEqual(
      alone.map(({ misconception, state }) => [misconception.id, [...state.at]]),
    );
    expect(alone.length).toBeGreaterThan(4);
  });

  it('predicts what its changed plan gives when it is compiled afresh', () => {
    for (const { id, shows } of THREE_CIRCUITS) {
      const on = circuitOf(shows[0]!.on);
      const does = scenarioOf(shows[0]!.does, shows[0]!.faults);
      const { plan, scenario } = viewOf(byId(id), on, does)!;
      const afresh = machineOf(plan);
      const { machine, state } = predict(byId(id), on, does)!;
      expect(readState(machine, state), id).toEqual(readState(afresh, play(afresh, scenario).state));
    }
  });
});
