/** Each step of each path, as a stop at a part that is drawn; and the parts themselves. */
import type { Circuit, Device, Step } from '../../../shared/circuit.ts';
import { plansOf, trimmed } from './of-device.ts';
import type { Part, PartPlan, Traits } from './part.ts';

/** Where a path meets a part. `enter` and `leave` are indexes into the part's spots. */
export type Stop =
  | { readonly kind: 'rail'; readonly terminal: string }
  /** Through the part. */
  | { readonly kind: 'hop'; readonly part: number; readonly enter: number; readonly leave: number }
  /** At one terminal of it only. */
  | { readonly kind: 'touch'; readonly part: number; readonly spot: number };

export interface Stops {
  readonly parts: readonly Part[];
  /** One list for each path of the circuit. */
  readonly paths: readonly (readonly Stop[])[];
}

interface Candidate {
  readonly device: Device;
  readonly plan: PartPlan;
  readonly used: Set<string>;
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

function traitsOf({ actuator, delay, latch, mechanism }: PartPlan): Traits {
  return {
    ...(actuator ? { actuator } : {}),
    ...(delay ? { delay } : {}),
    ...(latch ? { latch } : {}),
    ...(mechanism ? { mechanism } : {}),
  };
}

const hasSpot = (plan: PartPlan, terminal: string): boolean =>
  plan.spots.some((spot) => spot.terminal === terminal);

export function findStops(circuit: Circuit): Stops {
  const devices = new Map(circuit.devices.map((device) => [device.name, device]));
  const known = new Map<string, Candidate[]>();
  const candidatesOf = (name: string): Candidate[] => {
    let candidates = known.get(name);
    if (!candidates) {
      const device = devices.get(name);
      candidates = device ? plansOf(device).map((plan) => ({ device, plan, used: new Set<string>() })) : [];
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
      candidate.used.add(enter).add(leave);
      return { kind: 'hop', candidate, enter, leave };
    }),
  );
  const touch = (name: string, terminal: string): Raw[] => {
    const holding = candidatesOf(name).filter(({ plan }) => hasSpot(plan, terminal));
    // A common shared by several points belongs to the point it is traced through, else to a box of its own.
    const candidate =
      holding.find(({ used }) => used.has(terminal)) ??
      holding.find(({ plan }) => plan.form === 'common') ??
      holding[0];
    if (!candidate) return [];
    candidate.used.add(terminal);
    return [{ kind: 'touch', candidate, terminal }];
  };
  const raw = circuit.paths.map((path, p) =>
    path.steps.flatMap((step: Step, s): Raw[] => {
      const found = hopped[p]?.[s];
      if (found) return [found];
      const { device, enter, leave } = step;
      return leave === undefined || leave === enter
        ? touch(device, enter)
        : [...touch(device, enter), ...touch(device, leave)];
    }),
  );

  const parts: Part[] = [];
  const partOf = (candidate: Candidate): Part => {
    if (!candidate.part) {
      const plan = trimmed(candidate.plan, (terminal) => candidate.used.has(terminal));
      candidate.part = {
        ...plan,
        index: parts.length,
        id: `${candidate.device.name}:${plan.spots[0]?.terminal ?? ''}`,
        device: candidate.device,
        look: `${plan.form} ${plan.actuator ?? ''} ${plan.delay ?? ''} ${plan.latch ?? ''} ${plan.spots.length}`,
        traits: traitsOf(plan),
      };
      parts.push(candidate.part);
    }
    return candidate.part;
  };
  const spotOf = (part: Part, terminal: string): number =>
    part.spots.findIndex((spot) => spot.terminal === terminal);
  const stopOf = (step: Raw): Stop => {
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
    return { kind: 'touch', part: part.index, spot: spotOf(part, step.terminal) };
  };
  const paths = raw.map((steps) => steps.map((step) => stopOf(step)));
  return { parts, paths };
}
