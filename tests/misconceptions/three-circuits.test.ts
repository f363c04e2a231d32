/**
 * Each misconception on circuits worked out by hand from what the idea says: where it shows, where it nearly would, and where
 * another would. Common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { MISCONCEPTIONS, predictor } from '../../src/misconceptions/index.ts';
import {
  type Machine,
  machineOf,
  meter,
  planOf,
  play,
  readState,
  type State,
} from '../../src/solver/index.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';
import { THREE_CIRCUITS } from './circuits/all.ts';
import type { Told } from './circuits/three-circuits.ts';

function answers({ meters }: Told, machine: Machine, state: State): Record<string, string> {
  const { lamps, inputs, coils } = readState(machine, state);
  const measured = (meters ?? []).map(([first, second]) => {
    const { volts, floating } = meter(machine, state, first, second);
    return [`${first} to ${second}`, floating ? 'nothing' : `${Math.round(volts)} V`];
  });
  const moved = Object.entries(coils).map(([coil, { operated }]) => [coil, operated ? 'operated' : 'rest']);
  return { ...lamps, ...inputs, ...Object.fromEntries([...moved, ...measured]) };
}

const scenarioFor = ({ does, faults }: Told) => scenarioOf(does, faults);

function right(told: Told): Record<string, string> {
  const scenario = scenarioFor(told);
  const machine = machineOf(planOf(circuitOf(told.on), scenario.faults));
  return answers(told, machine, play(machine, scenario).state);
}

/** What somebody with the idea answers; what is right where it makes no difference. Each comes to an answer. */
function believing(id: string, told: Told): Record<string, string> {
  const misconception = MISCONCEPTIONS.find((one) => one.id === id)!;
  const circuit = circuitOf(told.on);
  const scenario = scenarioFor(told);
  const foretold = predictor(misconception, circuit, machineOf(planOf(circuit, scenario.faults)))(scenario);
  if (foretold.kind === 'no-answer') return {};
  return foretold.kind === 'no-difference'
    ? right(told)
    : answers(told, foretold.prediction.machine, foretold.prediction.state);
}

const each = <T>(of: (circuits: (typeof THREE_CIRCUITS)[number]) => readonly T[]) =>
  THREE_CIRCUITS.flatMap((circuits) => of(circuits).map((told, at) => ({ id: circuits.id, at, told })));

describe('a misconception', () => {
  it('has a circuit where it shows, one where it nearly would, one where another would', () => {
    expect(THREE_CIRCUITS.map(({ id }) => id).sort()).toEqual(MISCONCEPTIONS.map(({ id }) => id).sort());
    for (const { id, shows, nearly, another } of THREE_CIRCUITS) {
      expect(shows.length, id).toBeGreaterThan(0);
      expect(nearly.length, id).toBeGreaterThan(0);
      expect(another.other).not.toBe(id);
      for (const told of [...shows, another])
        expect({ ...told.right, ...told.instead }).not.toEqual(told.right);
    }
  });

  it.each(each(({ shows }) => shows))('$id shows ($at)', ({ id, told }) => {
    expect(right(told)).toEqual(told.right);
    expect(believing(id, told)).toEqual({ ...told.right, ...told.instead });
  });

  it.each(each(({ nearly }) => nearly))('$id nearly shows ($at)', ({ id, told }) => {
    expect(right(told)).toEqual(told.right);
    expect(believing(id, told)).toEqual(told.right);
  });

  it.each(each(({ another }) => [another]))('$id isn’t what shows where $told.other does', ({ id, told }) => {
    expect(right(told)).toEqual(told.right);
    expect(believing(told.other, told)).toEqual({ ...told.right, ...told.instead });
    expect(believing(id, told)).toEqual({ ...told.right, ...told.own });
    expect({ ...told.own }).not.toEqual(told.instead);
  });

  it('is an idea of its own: for each two there is a circuit on which they answer differently', () => {
    const told = THREE_CIRCUITS.flatMap(({ shows, nearly, another }) => [...shows, ...nearly, another]);
    const ids = MISCONCEPTIONS.map(({ id }) => id);
    const answered = new Map(ids.map((id) => [id, told.map((on) => JSON.stringify(believing(id, on)))]));
    for (const one of ids)
      for (const other of ids) {
        if (one >= other) continue;
        const differs = answered.get(one)!.some((answer, at) => answer !== answered.get(other)![at]);
        expect(differs, `${one} and ${other}`).toBe(true);
      }
  });
});
