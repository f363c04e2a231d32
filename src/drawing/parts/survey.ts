/** What there is to draw: parts, conductors and runs of a circuit, before anything has a place. */
import type { Circuit } from '../../../shared/circuit.ts';
import { findNets, type Wiring } from './nets.ts';
import type { Part } from './part.ts';
import { findRuns, type Poles, polesOf, type Run } from './runs.ts';
import { findStops } from './stops.ts';

export interface Survey {
  readonly circuit: Circuit;
  readonly parts: readonly Part[];
  readonly wiring: Wiring;
  readonly poles: Poles;
  readonly runs: readonly Run[];
  /** The run of each part, and whether it stands turned over. */
  readonly runOfPart: Int32Array;
  readonly flipped: Uint8Array;
  /** By part: its wired ports. */
  readonly portsOf: readonly (readonly number[])[];
  /** By port: 1 where it stands on the upper side of its part. */
  readonly above: Uint8Array;
}

export function survey(circuit: Circuit): Survey {
  const stops = findStops(circuit);
  const wiring = findNets(stops);
  const runs = findRuns(circuit, stops, wiring);
  const runOfPart = new Int32Array(stops.parts.length).fill(-1);
  const flipped = new Uint8Array(stops.parts.length);
  for (const run of runs)
    for (const { part, flipped: over } of run.parts) {
      runOfPart[part] = run.index;
      flipped[part] = over ? 1 : 0;
    }
  const above = new Uint8Array(wiring.partOfPort.length);
  const portsOf = stops.parts.map(({ spots, index }) => {
    const first = wiring.firstPort[index] as number;
    const wired: number[] = [];
    spots.forEach(({ side }, spot) => {
      above[first + spot] = (side === 'top') !== (flipped[index] === 1) ? 1 : 0;
      if ((wiring.netOfPort[first + spot] as number) >= 0) wired.push(first + spot);
    });
    return wired;
  });
  return {
    circuit,
    parts: stops.parts,
    wiring,
    poles: polesOf(circuit, wiring),
    runs,
    runOfPart,
    flipped,
    portsOf,
    above,
  };
}

/** Whether a port stands on the upper side of its part. */
export const isAbove = (drawn: Survey, port: number): boolean => drawn.above[port] === 1;
