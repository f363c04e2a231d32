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
  return { circuit, parts: stops.parts, wiring, poles: polesOf(circuit, wiring), runs, runOfPart, flipped };
}

/** The side of the drawing on which a port stands. */
export function isAbove(drawn: Survey, port: number): boolean {
  const part = drawn.wiring.partOfPort[port] as number;
  const spot = drawn.parts[part]?.spots[drawn.wiring.spotOfPort[port] as number];
  return (spot?.side === 'top') !== (drawn.flipped[part] === 1);
}
