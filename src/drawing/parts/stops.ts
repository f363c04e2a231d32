/** Each step of each path, as a stop at a part that is drawn; and the parts themselves. */
import type { Circuit, Device, Step } from '../../../shared/circuit.ts';
import { once } from '../../graph/index.ts';
import { plansOf, trimmed } from './of-device.ts';
import type { Part, PartPlan, Traits } from './part.ts';

/** Where a path meets a part. `enter` and `leave` are indexes into the part's spots. */
export type Stop =
  | { readonly kind: 'rail'; readonly terminal: string }
  /** Through the part. */
  | { readonly kind: 'hop'; readonly part: number; readonly enter: number; readonly leave: number }
  /** At one terminal of it only. `shared`: at the common of several points, so that the path joins it but does not hold it. */
  | { readonly kind: 'touch'; readonly part: number; readonly spot: number; readonly shared: boolean };

export interface Stops {
  readonly parts: readonly Part[];
  /** In the circuit's order. A path that goes through a device otherwise than through one part of it is parted there. */
  readonly pieces: readonly Piece[];
}

/** Stops of one path with a conductor from each to the next. */
export interface Piece {
  /** Index of the path in the circuit. */
  readonly path: number;
  readonly stops: readonly Stop[];
}

interface Candidate {
  readonly device: Device;
  readonly plan: PartPlan;
  readonly used: string[];
  part?: Part;
}

/** A step before the parts are cut down to what is wired. */
type Raw =
  | { readonly kind: 'rail'; readonly terminal: string }
  | {
      readonly kind: 'hop';
      readonly candidate: Candidate;
      readonly enter: string;
      readonly leave: string;
    }
  | { readonly kind: 'touch'; readonly candidate: Candidate; readonly terminal: string };

/** What follows from a plan alone, for plans that are drawn again and again. */
const lookOf = once((plan: PartPlan): Pick<Part, 'look' | 'traits'> => {
  const { form, actuator = '', delay = '', winding = '', spots } = plan;
  return { look: `${form} ${actuator} ${delay} ${winding} ${spots.length}`, traits: traitsOf(plan) };
});

function traitsOf({ actuator, delay, winding, coil, mechanism }: PartPlan): Traits {
  return {
    ...(actuator ? { actuator } : {}),
    ...(delay ? { delay } : {}),
    ...(winding ? { winding } : {}),
    ...(coil ? { coil } : {}),
    ...(mechanism ? { mechanism } : {}),
  };
}

/** Every terminal that a path comes to. */
function terminalsMet(circuit: Circuit): Set<string> {
  const met = new Set<string>();
  for (const { steps } of circuit.paths)
    for (const { device, enter, leave } of steps) {
      met.add(`${device}:${enter}`);
      if (leave !== undefined) met.add(`${device}:${leave}`);
    }
  return met;
}

const hasSpot = (plan: PartPlan, terminal: string): boolean =>
  plan.spots.some((spot) => spot.terminal === terminal);

export function findStops(circuit: Circuit): Stops {
  const devices = new Map(circuit.devices.map((device) => [device.name, device]));
  const known = new Map<string, Candidate[]>();
  const met = terminalsMet(circuit);
  const candidatesOf = (name: string): Candidate[] => {
    let candidates = known.get(name);
    if (!candidates) {
      const device = devices.get(name);
      candidates = device ? plansOf(device).map((plan) => ({ device, plan, used: [] })) : [];
      known.set(name, candidates);
    }
    return candidates;
  };

  const hopped = circuit.paths.map((path) =>
    path.steps.map((step): Raw | undefined => {
      const { device, enter, leave } = step;
      if (!device.startsWith('-')) return { kind: 'rail', terminal: `${device}:${enter}` };
      if (leave === undefined || leave === enter) return undefined;
      const candidate = candidatesOf(device).find(
        ({ plan }) => hasSpot(plan, enter) && hasSpot(plan, leave) && plan.form !== 'terminal',
      );
      if (!candidate) return undefined;
      candidate.used.push(enter, leave);
      return { kind: 'hop', candidate, enter, leave };
    }),
  );
  const touch = (name: string, terminal: string): Raw[] => {
    const holding = candidatesOf(name).filter(({ plan }) => hasSpot(plan, terminal));
    // A common of several points is drawn at each point that is wired; only where none is, as a box of its own.
    const candidate =
      holding.find(({ plan }) =>
        plan.spots.some((spot) => spot.terminal !== terminal && met.has(`${name}:${spot.terminal}`)),
      ) ??
      holding.find(({ plan }) => plan.form === 'common') ??
      holding[0];
    if (!candidate) return [];
    candidate.used.push(terminal);
    return [{ kind: 'touch', candidate, terminal }];
  };
  /** What several parts of a device share, where it is wired: one that a path ends at goes on to it. */
  const commonOf = ({ device, plan }: Candidate): string | undefined => {
    if (plan.form !== 'input' && plan.form !== 'output' && plan.form !== 'coil') return undefined;
    const others = candidatesOf(device.name).filter((other) => other.plan !== plan);
    return plan.spots.find(
      ({ terminal }) =>
        met.has(`${device.name}:${terminal}`) && others.some((other) => hasSpot(other.plan, terminal)),
    )?.terminal;
  };
  const raw = circuit.paths.flatMap(({ steps }, path) => {
    let stops: Raw[] = [];
    const pieces = [{ path, stops }];
    steps.forEach(({ device, enter, leave }: Step, index) => {
      const found = hopped[path]?.[index];
      stops.push(...(found ? [found] : touch(device, enter)));
      if (found || leave === undefined || leave === enter) return;
      stops = touch(device, leave);
      pieces.push({ path, stops });
    });
    return pieces;
  });

  const parts: Part[] = [];
  const partOf = (candidate: Candidate): Part => {
    if (!candidate.part) {
      const plan = trimmed(candidate.plan, (terminal) => candidate.used.includes(terminal));
      const { form, spots, ways, actuator, delay, winding, coil, mechanism, text } = plan;
      const { look, traits } = lookOf(plan);
      // All parts have the same fields in the same order, which keeps reading them fast.
      candidate.part = {
        form,
        spots,
        ways,
        actuator,
        delay,
        winding,
        coil,
        mechanism,
        text,
        index: parts.length,
        id: `${candidate.device.name}:${plan.spots[0]?.terminal ?? ''}`,
        device: candidate.device,
        look,
        traits,
      };
      parts.push(candidate.part);
    }
    return candidate.part;
  };
  const spotOf = (part: Part, terminal: string): number =>
    part.spots.findIndex((spot) => spot.terminal === terminal);
  const stopOf = (step: Raw, first: boolean, last: boolean): Stop => {
    if (step.kind === 'rail') return step;
    const part = partOf(step.candidate);
    if (step.kind === 'hop')
      return {
        kind: 'hop',
        part: part.index,
        enter: spotOf(part, step.enter),
        leave: spotOf(part, step.leave),
      };
    if (part.form === 'terminal') return { kind: 'hop', part: part.index, enter: 0, leave: 1 };
    const spot = spotOf(part, step.terminal);
    const common = commonOf(step.candidate);
    if (common === undefined) return { kind: 'touch', part: part.index, spot, shared: false };
    const shared = spotOf(part, common);
    if (spot === shared || !(first || last)) {
      // Where nothing comes to another terminal of the part, this is what holds it.
      const { device, plan } = step.candidate;
      const held = plan.spots.some(
        ({ terminal }) => terminal !== step.terminal && met.has(`${device.name}:${terminal}`),
      );
      return { kind: 'touch', part: part.index, spot, shared: spot === shared && held };
    }
    return last
      ? { kind: 'hop', part: part.index, enter: spot, leave: shared }
      : { kind: 'hop', part: part.index, enter: shared, leave: spot };
  };
  const pieces = raw.map(({ path, stops }) => ({
    path,
    stops: stops.map((step, index) => stopOf(step, index === 0, index === stops.length - 1)),
  }));
  return { parts, pieces };
}
