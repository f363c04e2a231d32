/**
 * Potentials as vectors. Direct voltage, and the two parts of an alternating one (in phase with L1, and a quarter turn ahead
 * of it), lie at right angles to each other: what one part does doesn't depend on the others (superposition), a difference
 * of potential is a difference of vectors, and the r.m.s. value of all together is the length (root of the sum of squares).
 * All alternating supplies have one frequency, and single-phase ones the phase of L1.
 */
import type { PlanPole, PlanSupply } from './plan.ts';

/** The axes that a circuit's supplies need, as numbers from 0; -1 for one that no supply has a part on. */
export interface Axes {
  readonly count: 1 | 2 | 3;
  readonly direct: number;
  readonly inPhase: number;
  readonly quadrature: number;
}

/** Volts along each axis: `volts[axis][index]`, the index that of a node, a point or a load. */
export type Volts = readonly Float64Array[];

/** At least one axis, so that a circuit without any supply has voltages too. */
export function axesOf(supplies: readonly PlanSupply[]): Axes {
  const alternating = supplies.some(({ supply }) => supply.current !== 'DC');
  const phases = supplies.some(({ supply }) => supply.current === '3AC');
  const direct = !alternating || supplies.some(({ supply }) => supply.current === 'DC');
  const inPhase = direct ? 1 : 0;
  return {
    count: ((direct ? 1 : 0) + (alternating ? 1 : 0) + (phases ? 1 : 0)) as Axes['count'],
    direct: direct ? 0 : -1,
    inPhase: alternating ? inPhase : -1,
    quadrature: phases ? inPhase + 1 : -1,
  };
}

/** The potential of a pole against its supply's return along one axis. */
export function alongAxis({ direct, inPhase, quadrature }: Axes, pole: PlanPole, axis: number): number {
  if (axis === direct) return pole.direct;
  if (axis === inPhase) return pole.re;
  return axis === quadrature ? pole.im : 0;
}

export function newVolts({ count }: Axes, size: number): Volts {
  const volts = [new Float64Array(size)];
  while (volts.length < count) volts.push(new Float64Array(size));
  return volts;
}

export function copyVolts(volts: Volts): Volts {
  const copy = [volts[0]!.slice()];
  for (let axis = 1; axis < volts.length; axis++) copy.push(volts[axis]!.slice());
  return copy;
}

/** Length of the vector at an index: r.m.s. volts. */
export function lengthAt(volts: Volts, index: number): number {
  const first = volts[0]![index]!;
  if (volts.length === 1) return Math.abs(first);
  const second = volts[1]![index]!;
  return volts.length === 2 ? Math.hypot(first, second) : Math.hypot(first, second, volts[2]![index]!);
}

/** Length of the difference of two vectors. */
export function distance(volts: Volts, one: number, other: number): number {
  let sum = 0;
  for (const axis of volts) sum += (axis[one]! - axis[other]!) ** 2;
  return Math.sqrt(sum);
}

/** The direct part, with its sign, and the r.m.s. value of the alternating part of a difference of two vectors, or of one. */
export function partsOfVolts(
  { direct }: Axes,
  along: (axis: number) => number,
  count: number,
): { direct: number; alternating: number } {
  let squares = 0;
  for (let axis = 0; axis < count; axis++) if (axis !== direct) squares += along(axis) ** 2;
  return { direct: direct < 0 ? 0 : along(direct), alternating: Math.sqrt(squares) };
}
