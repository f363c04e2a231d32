import type { Circuit } from '../../shared/circuit.ts';
import type { Checked } from '../../shared/problem.ts';
import type { Scenario } from '../../shared/scenario.ts';
import {
  readActs,
  readCircuitJson,
  readCircuitWithPlaces,
  readFaults,
  type TextPlaces,
} from '../circuit/index.ts';
import { readGiven } from './files.ts';
import type { Io } from './io.ts';
import { reportProblems } from './problems.ts';

/** What a command was given: a circuit, and what is done to it. */
export interface GivenCircuit {
  readonly circuit: Circuit;
  /** Where its parts stand in the notation; absent where it was given as JSON. */
  readonly places?: TextPlaces;
  readonly scenario: Scenario;
}

export interface ScenarioOptions {
  readonly do?: string;
  readonly fault?: readonly string[];
  readonly dead?: boolean;
}

/** Reads a circuit in the notation or, when the text begins with a brace, in JSON. */
function readEither(text: string): Checked<Pick<GivenCircuit, 'circuit' | 'places'>> {
  if (!text.trimStart().startsWith('{')) return readCircuitWithPlaces(text);
  const read = readCircuitJson(text);
  return read.ok ? { ok: true, value: { circuit: read.value } } : read;
}

/** Reads file, acts and faults; undefined when there are mistakes, all of them told. */
export async function givenCircuit(
  io: Io,
  file: string,
  options: ScenarioOptions,
): Promise<GivenCircuit | undefined> {
  const read = readEither(await readGiven(io, file));
  if (!read.ok) {
    await reportProblems(read.problems, file, io);
    return undefined;
  }
  const { circuit } = read.value;
  const acts = readActs(options.do ?? '', circuit);
  const faults = readFaults((options.fault ?? []).join('; '), circuit);
  if (!acts.ok) await reportProblems(acts.problems, '--do', io);
  if (!faults.ok) await reportProblems(faults.problems, '--fault', io);
  if (!acts.ok || !faults.ok) return undefined;
  const start = options.dead ? 'dead' : 'live';
  return { ...read.value, scenario: { start, faults: faults.value, acts: acts.value } };
}
