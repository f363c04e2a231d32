/** Stops of the paths: that what they name is there, and that hops lead somewhere. */
import type { Step } from '../../../shared/circuit.ts';
import type { CircuitProblemSaid } from '../../words/index.ts';
import { supplyTerminals } from '../anatomy/index.ts';
import { type Inside, insideOf } from '../inside.ts';
import { LIMITS } from '../limits.ts';
import { nearest } from '../nearest.ts';
import { type PartialCircuit, type Unsound, unsoundAt } from './types.ts';

interface Known {
  readonly isSupply: boolean;
  readonly inside: Inside;
  readonly set: ReadonlySet<string>;
}

/** `tolerated`: devices whose declaration could not be read; `unsoundDevices`: by index, what is wrong with the others. */
export function pathFindings(
  { supplies, devices, paths: all }: PartialCircuit,
  tolerated: ReadonlySet<string>,
  unsoundDevices: readonly (readonly Unsound[])[],
): Unsound[] {
  const known = new Map<string, Known>();
  for (const supply of supplies) {
    const terminals = supplyTerminals(supply);
    known.set(supply.name, {
      isSupply: true,
      inside: { terminals, group: new Map() },
      set: new Set(terminals),
    });
  }
  const skipped = new Set(tolerated);
  devices.forEach((device, index) => {
    if (unsoundDevices[index]!.length > 0) skipped.add(device.name);
    else {
      const inside = insideOf(device);
      known.set(device.name, { isSupply: false, inside, set: new Set(inside.terminals) });
    }
  });
  const findings: Unsound[] = [];
  all.forEach(({ steps }, path) => {
    steps.forEach((step, index) => {
      if (!step) return;
      // Whoever reads a thousand findings needs no more.
      if (findings.length >= LIMITS.problems) return;
      const before = index > 0 ? steps[index - 1] : undefined;
      const found =
        stopFinding(step, known, skipped, findings.length) ??
        (before ? joinFinding(before, step) : undefined);
      if (found) findings.push(unsoundAt(found, { kind: 'step', path, step: index }));
    });
  });
  return findings;
}

function stopFinding(
  { device: name, enter, leave }: Step,
  known: ReadonlyMap<string, Known>,
  skipped: ReadonlySet<string>,
  already: number,
): CircuitProblemSaid | undefined {
  const there = known.get(name);
  const isSupply = !name.startsWith('-');
  if (isSupply && leave !== undefined) return { says: 'supply-hop', supply: name, enter, leave };
  if (skipped.has(name)) return undefined;
  if (!there) {
    const names = [...known.keys()].filter((each) => each.startsWith('-') !== isSupply);
    // Looking for the nearest of many names costs time: after many mistakes it is left.
    const meant = already < 100 ? nearest(name, names) : undefined;
    return { says: isSupply ? 'unknown-supply' : 'unknown-designation', name, meant, names };
  }
  for (const terminal of leave === undefined ? [enter] : [enter, leave]) {
    if (there.set.has(terminal)) continue;
    const { terminals } = there.inside;
    return { says: 'unknown-terminal', name, terminal, meant: nearest(terminal, there.set), terminals };
  }
  if (leave === enter) return { says: 'same-terminal-hop', name, terminal: enter };
  const { group, terminals } = there.inside;
  if (leave !== undefined && group.get(enter) !== group.get(leave)) {
    const others = terminals.filter((each) => each !== enter && group.get(each) === group.get(enter));
    return { says: 'no-way-through', name, enter, leave, others };
  }
  return undefined;
}

function joinFinding(before: Step, step: Step): CircuitProblemSaid | undefined {
  const from = before.leave ?? before.enter;
  if (before.device !== step.device || from !== step.enter) return undefined;
  return { says: 'joins-itself', at: `${step.device}:${from}` };
}
