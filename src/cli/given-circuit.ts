import type { Circuit } from '../../shared/circuit.ts';
import type { Checked } from '../../shared/problem.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { readActs, readCircuit, readCircuitJson, readFaults } from '../circuit/index.ts';
import { readGiven } from './files.ts';
import type { Io } from './io.ts';
import { reportProblems } from './problems.ts';

/** What a command was given: a circuit, and what is done to it. */
export interface GivenCircuit {
  readonly circuit: Circuit;
  readonly scenario: Scenario;
}

export interface ScenarioOptions {
  readonly do?: string;
  readonly fault?: readonly string[];
  readonly dead?: boolean;
}

/** Reads a circuit in the notation or, when the text begins with a brace, in JSON. */
const readEither = (text: string): Checked<Circuit> =>
  text.trimStart().startsWith('{') ? readCircuitJson(text) : readCircuit(text);

/** Reads file, acts and faults; undefined when there are mistakes, all of them told. */
export async function givenCircuit(
  io: Io,
  file: string,
  options: ScenarioOptions,
): Promise<GivenCircuit | undefined> {
  const circuit = readEither(await readGiven(io, file));
  if (!circuit.ok) {
    await reportProblems(circuit.problems, file, io);
    return undefined;
  }
  const acts = readActs(options.do ?? '', circuit.value);
  const faults = readFaults((options.fault ?? []).join('; '), circuit.value);
  if (!acts.ok) await reportProblems(acts.problems, '--do', io);
  if (!faults.ok) await reportProblems(faults.problems, '--fault', io);
  if (!acts.ok || !faults.ok) return undefined;
  const start = options.dead ? 'dead' : 'live';
  return { circuit: circuit.value, scenario: { start, faults: faults.value, acts: acts.value } };
}
