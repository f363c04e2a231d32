/** What there is to draw: parts, conductors and runs of a circuit, before anything has a place. */
import type { Circuit } from '../../../shared/circuit.ts';
import { findNets, type Wiring } from './nets.ts';
import { plansOf } from './of-device.ts';
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
  /** By mechanism: what is drawn of it. First its coil; where it has none that is drawn, what stands first; then in the order of its device. */
  readonly fellows: ReadonlyMap<string, readonly Part[]>;
  /** By port: 1 where it stands on the upper side of its part. */
  readonly above: Uint8Array;
}

const NONE: readonly Part[] = [];

/** Everything drawn that one coil, hand or process moves with this part. */
export const fellowsOf = ({ fellows }: Survey, { mechanism = '' }: Part): readonly Part[] =>
  fellows.get(mechanism) ?? NONE;

/** `parts`: in the order in which they stand. */
export function findFellows(parts: Iterable<Part>): Map<string, Part[]> {
  const found = new Map<string, Part[]>();
  for (const part of parts) {
    if (!part.mechanism) continue;
    const list = found.get(part.mechanism);
    if (list) list.push(part);
    else found.set(part.mechanism, [part]);
  }
  for (const list of found.values()) {
    const plans = plansOf((list[0] as Part).device);
    const rank = ({ spots }: Part): number =>
      plans.findIndex((plan) => plan.spots[0]?.terminal === spots[0]?.terminal);
    const [first] = list;
    list.sort((a, b) => rank(a) - rank(b));
    if (first && list[0]?.form !== 'coil') list.unshift(...list.splice(list.indexOf(first), 1));
  }
  return found;
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
    fellows: new Map(),
    above,
  };
}

/** Whether a port stands on the upper side of its part. */
export const isAbove = (drawn: Survey, port: number): boolean => drawn.above[port] === 1;
